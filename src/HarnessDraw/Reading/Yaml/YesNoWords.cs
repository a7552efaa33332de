using System.Collections.Immutable;

namespace HarnessDraw.Reading;

/// <summary>The words that say yes and no where a yes or no is expected, and only there.</summary>
public static class YesNoWords
{
    public static readonly ImmutableArray<string> Yes = ["yes", "Yes", "YES", "true", "True", "TRUE"];
    public static readonly ImmutableArray<string> No = ["no", "No", "NO", "false", "False", "FALSE"];

    public static bool? Read(string text) => Yes.Contains(text) ? true : No.Contains(text) ? false : null;
}
