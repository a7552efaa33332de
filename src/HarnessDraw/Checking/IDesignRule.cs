using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>One design rule: what it is about, and everything in a plan that breaks it.</summary>
public interface IDesignRule
{
    RuleInfo Info { get; }

    IEnumerable<Finding> Find(RuleContext context);
}
