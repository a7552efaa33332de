namespace HarnessDraw.Cli;

/// <summary>What the process returns; part of the output contract.</summary>
internal static class ExitCode
{
    public const int Done = 0;

    /// <summary>The description cannot be read, has error findings, or a sheet fits no paper.</summary>
    public const int Problems = 1;
    public const int WrongUsage = 2;

    /// <summary>A file could not be read or written.</summary>
    public const int Files = 3;
}
