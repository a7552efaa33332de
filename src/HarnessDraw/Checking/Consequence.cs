namespace HarnessDraw.Checking;

/// <summary>What a broken rule leads to, worst first: findings are sorted by it.</summary>
public enum Consequence
{
    /// <summary>Heat, arcs or a short that nothing opens.</summary>
    Fire,

    /// <summary>A brake, lamp, steering or ignition function fails without warning.</summary>
    LostFunction,

    /// <summary>A part is destroyed.</summary>
    Damage,

    /// <summary>Something does not work, or the harness cannot be built.</summary>
    DoesNotWork,

    /// <summary>It works on the first day and not for long.</summary>
    DoesNotLast,

    /// <summary>Hard to read, to find or to mend.</summary>
    Untidy,
}
