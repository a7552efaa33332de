using System.Diagnostics;

namespace HarnessDraw.Tests.Cli;

/// <summary>The program in a process of its own, with an environment of its own.</summary>
internal static class OneProcess
{
    /// <summary>The published executable, when the variable names one.</summary>
    public static string? Native => Environment.GetEnvironmentVariable("HARNESSDRAW_NATIVE") is { Length: > 0 } path ? path : null;

    public static (int Code, string Output, string Messages) Run(string folder, IReadOnlyDictionary<string, string> environment, params string[] args)
    {
        var host = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } path ? path : "dotnet";
        return Start(host, folder, environment, [Path.Combine(AppContext.BaseDirectory, "harnessdraw.dll"), .. args]);
    }

    public static (int Code, string Output, string Messages) RunNative(string folder, params string[] args) =>
        Start(Native!, folder, new Dictionary<string, string>(), args);

    private static (int Code, string Output, string Messages) Start(string file, string folder, IReadOnlyDictionary<string, string> environment, string[] args)
    {
        var start = new ProcessStartInfo(file, args) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true };
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var messages = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(120_000), "the program did not end");
        return (process.ExitCode, output, messages.Result);
    }
}
