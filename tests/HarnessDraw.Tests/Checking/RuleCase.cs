using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>A rule, a plan that breaks it with what the message must say, and a plan just inside its limit.</summary>
internal sealed record RuleCase(string Rule, Func<Plan, Plan> Broken, string[] Says, Func<Plan, Plan> Sound);
