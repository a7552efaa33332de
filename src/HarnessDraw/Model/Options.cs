using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>A choice the builder makes ('charging': exciter or single wire).</summary>
public sealed record Option(string Id, ImmutableArray<string> Choices, string Usual, SourceSpan? At);

/// <summary>A rule between choices ('single wire' needs or excludes 'electric fan').</summary>
public sealed record OptionRule(string IfOption, string IfChoice, bool Needs, string ThenOption, string ThenChoice, SourceSpan? At);

/// <summary>When something is built: every named option must have one of its listed choices. Empty means always.</summary>
public sealed record BuildCondition(ImmutableArray<OptionChoice> AllOf)
{
    public static readonly BuildCondition Always = new([]);

    public bool IsAlways => AllOf.IsEmpty;

    /// <summary>True when <paramref name="build"/> (option to choice) includes what this condition guards.</summary>
    public bool Holds(ImmutableSortedDictionary<string, string> build)
    {
        // asked for every branch of every state: no closure
        foreach (var condition in AllOf)
        {
            if (!build.TryGetValue(condition.Option, out var choice) || !condition.Choices.Contains(choice))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>False when no single build can satisfy both: such wires may share a cavity.</summary>
    public bool MayMeet(BuildCondition other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return AllOf.All(a => other.AllOf.All(b => a.Option != b.Option || a.Choices.Intersect(b.Choices).Any()));
    }

    /// <summary>Builds in which both hold, options in ordinal order.</summary>
    public BuildCondition And(BuildCondition other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return IsAlways
            ? other
            : new([.. AllOf.Concat(other.AllOf).GroupBy(c => c.Option, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new OptionChoice(g.Key, g.Select(c => c.Choices).Aggregate((x, y) => [.. x.Intersect(y, StringComparer.Ordinal)])))]);
    }

    /// <summary>For people: 'charging: exciter; cooling: belt fan or none', or the empty text for always.</summary>
    public string Words => string.Join("; ", AllOf.Select(c => c.Words));

    /// <summary>'charging=exciter, cooling=belt fan|none', or the empty text for always.</summary>
    public override string ToString() => string.Join(", ", AllOf.Select(c => $"{c.Option}={string.Join("|", c.Choices)}"));
}

/// <summary>The choices of one option that are allowed.</summary>
public sealed record OptionChoice(string Option, ImmutableArray<string> Choices)
{
    private const string With = "with ";

    /// <summary>For people: 'cooling: belt fan or none'; where the choices name their option it is said once: 'fog lamps' of 'fog lamps: with fog lamps'.</summary>
    public string Words => Choices.All(c => $" {c} ".Contains($" {Option} ", StringComparison.OrdinalIgnoreCase))
        ? string.Join(" or ", Choices.Select(c => c.StartsWith(With, StringComparison.Ordinal) ? c[With.Length..] : c))
        : $"{Option}: {string.Join(" or ", Choices)}";
}

/// <summary>A position of the key.</summary>
public enum KeyPosition
{
    Off,
    Accessory,
    Run,
    Start,
}

/// <summary>What the engine does.</summary>
public enum EngineState
{
    Stopped,
    Cranking,
    Running,
}

/// <summary>A named state of key, engine and switches; <see cref="On"/> lists the circuits that are switched on.</summary>
public sealed record OperatingState(string Id, KeyPosition Key, EngineState Engine, ImmutableArray<string> On, SourceSpan? At);
