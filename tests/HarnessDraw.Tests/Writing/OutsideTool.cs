using System.Diagnostics;
using HarnessDraw.Drawing;

namespace HarnessDraw.Tests.Writing;

/// <summary>A program of the machine that gives a second opinion. Where it is missing the test is skipped, with HARNESSDRAW_REQUIRE_TOOLS=1 it fails.</summary>
internal static class OutsideTool
{
    public static string Find(params string[] names)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        var found = names.SelectMany(n => folders.Select(f => Path.Combine(f, n))).FirstOrDefault(File.Exists);
        return found ?? Missing(string.Join(" or ", names));
    }

    /// <summary>A file of the machine, such as a font.</summary>
    public static string FileAt(string path) => File.Exists(path) ? path : Missing(path);

    private static string Missing(string what)
    {
        var reason = $"{what} is not on this machine";
        if (Environment.GetEnvironmentVariable("HARNESSDRAW_REQUIRE_TOOLS") == "1")
        {
            Assert.Fail(reason);
        }

        Assert.Skip(reason);
        return "";
    }

    /// <summary>Runs a program to its end; its messages are part of a failure.</summary>
    public static void Run(string program, string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardError = true, RedirectStandardOutput = true };
        start.Environment["FONTCONFIG_FILE"] = Path.Combine(folder, "fonts.conf");
        start.Environment["HOME"] = folder;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(120_000))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{program} did not end within two minutes");
        }

        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {output.GetAwaiter().GetResult()}{errors.GetAwaiter().GetResult()}");
    }

    /// <summary>A folder of its own in which only the shipped faces are known to a program.</summary>
    public static string FolderWithFaces()
    {
        var folder = Directory.CreateTempSubdirectory("harnessdraw-tools-").FullName;
        var faces = Directory.CreateDirectory(Path.Combine(folder, "faces")).FullName;
        foreach (var weight in new[] { FaceWeight.Medium, FaceWeight.Bold })
        {
            for (var i = 0; i < 2; i++)
            {
                File.WriteAllBytes(Path.Combine(faces, $"{weight}-{i}.ttf"), FaceSet.Shipped.Face(weight, i).Bytes.ToArray());
            }
        }

        File.WriteAllText(Path.Combine(folder, "fonts.conf"), $"<?xml version=\"1.0\"?><fontconfig><dir>{faces}</dir><cachedir>{folder}/cache</cachedir></fontconfig>");
        return folder;
    }
}
