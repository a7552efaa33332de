using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using HarnessDraw.Electrical;

namespace HarnessDraw.Tests.Electrical;

/// <summary>A network as a deck for ngspice, and the node volts that ngspice finds.</summary>
internal static partial class SpiceDeck
{
    /// <param name="title">First line of the deck.</param>
    /// <param name="parts">The network.</param>
    /// <param name="near">Where ngspice starts to search: it does not get over the knee of a regulator by itself. Its answer is its own.</param>
    public static string Write(string title, ImmutableArray<NetworkPart> parts, ImmutableArray<double?> near)
    {
        var deck = new StringBuilder($"* {title}\n.model silicon D(IS=1e-12 N=1 RS=0 TNOM=27)\n.options TEMP=27 RELTOL=1e-7 ABSTOL=1e-12 VNTOL=1e-9 ITL1=5000 RSHUNT=1e12\n");
        for (var i = 0; i < parts.Length; i++)
        {
            var (a, b, law) = (parts[i].A, parts[i].B, parts[i].Law);
            if (a != b && !law.IsOpen)
            {
                deck.Append(Line(i, $"{a} {b}", $"V({a},{b})", law)).Append('\n');
            }
        }

        for (var node = 1; node < near.Length; node++)
        {
            deck.Append(CultureInfo.InvariantCulture, $".nodeset V({node})={near[node] ?? 0:0.###}\n");
        }

        return deck.Append(".control\nset numdgt=12\nop\nprint all\n.endc\n.end\n").ToString();
    }

    /// <summary>Volts by node number; skips the test, with the reason, where ngspice is not installed.</summary>
    public static Dictionary<int, double> Solve(string deck)
    {
        var tool = Environment.GetEnvironmentVariable("PATH")!.Split(System.IO.Path.PathSeparator).Select(p => System.IO.Path.Combine(p, "ngspice")).FirstOrDefault(File.Exists);
        if (tool is null)
        {
            if (Environment.GetEnvironmentVariable("HARNESSDRAW_REQUIRE_TOOLS") == "1")
            {
                Assert.Fail("ngspice is not installed, and HARNESSDRAW_REQUIRE_TOOLS asks for it");
            }

            Assert.Skip("ngspice is not installed (Debian package ngspice)");
        }

        var file = System.IO.Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, deck);
            using var run = Process.Start(new ProcessStartInfo(tool!, ["-b", file]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = run.StandardError.ReadToEndAsync();
            var text = run.StandardOutput.ReadToEnd();
            run.WaitForExit();
            var volts = Printed().Matches(text).ToDictionary(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture), m => double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture));
            Assert.True(volts.Count > 0, $"ngspice found nothing: {text}\n{errors.Result}");
            return volts;
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string Line(int i, string nodes, string v, PartLaw law)
    {
        var (ohm, e, amps) = (N(law.Ohm), N(law.RatedV), N(law.RatedA));
        return law.Kind switch
        {
            PartBehaviour.Ohmic => $"R{i} {nodes} {ohm}",
            PartBehaviour.Source => $"B{i} {nodes} I=({v}-{e})/{ohm}",
            PartBehaviour.Diode => $"D{i} {nodes} silicon",
            PartBehaviour.Filament => $"B{i} {nodes} I={amps}*{v}/{e}*pow({v}*{v}/({e}*{e})+3.6e-5,-0.225)",
            PartBehaviour.Motor => $"B{i} {nodes} I=abs({v})<0.4*{e} ? {N(law.RatedA * 0.988)}*{v}/(0.4*{e}) : sgn({v})*{amps}*(1+0.02*(abs({v})/{e}-1))",
            PartBehaviour.ConstantPower => $"B{i} {nodes} I=abs({v})<0.6*{e} ? {amps}*{v}/(0.36*{e}) : {e}*{amps}/{v}",
            PartBehaviour.Battery => $"B{i} {nodes} I={v}<{e} ? ({v}-{e})/{ohm} : ({v}<{N(1.1 * law.RatedV)} ? ({v}-{e})*0.2 : {N(0.02 * law.RatedV)}+({v}-{N(1.1 * law.RatedV)})/(4*{ohm}))",
            PartBehaviour.Limited => $"B{i} {nodes} I={v}>{e} ? ({v}-{e})/{ohm}*1e-6 : (({v}-{e})/{ohm}<-{amps} ? -{amps}+(({v}-{e})/{ohm}+{amps})*1e-6 : ({v}-{e})/{ohm})",
            _ => throw new InvalidOperationException($"{law.Kind} is not in the deck"),
        };
    }

    private static string N(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    // 'v(3) = 1.234e+01' or '3 = 1.234e+01'
    [GeneratedRegex(@"^\s*v?\(?(\d+)\)?\s*=\s*(-?[\d.]+(?:e[-+]?\d+)?)", RegexOptions.Multiline | RegexOptions.IgnoreCase)]
    private static partial Regex Printed();
}
