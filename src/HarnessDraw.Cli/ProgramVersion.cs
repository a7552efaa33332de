namespace HarnessDraw.Cli;

/// <summary>The version of the program, as 'harnessdraw --version' prints it.</summary>
internal static class ProgramVersion
{
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetName().Version!.ToString(3);
}
