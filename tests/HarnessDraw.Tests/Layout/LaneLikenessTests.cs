using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using HarnessDraw.Checking;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.Svg;

namespace HarnessDraw.Tests.Layout;

/// <summary>
/// The wires side by side that look alike to some eye are all told of and no others: found again from the SVG as written, its lanes read here, and the colours reckoned here (IEC 61966-2-1 for sRGB, CIE 1976
/// L*a*b* under D65, the matrices of Machado, Oliveira and Fernandes, IEEE TVCG 15 (2009), table 1, severity 1).
/// </summary>
public sealed partial class LaneLikenessTests
{
    private const double Enough = 20;
    private const double BesideMm = 2.4;
    private const double LeastMm = 30;

    private static readonly double[][] Eyes =
    [
        [1, 0, 0, 0, 1, 0, 0, 0, 1],
        [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
        [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881],
        [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900],
    ];

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Wires_side_by_side_that_look_alike_are_told_of_and_no_others(string example)
    {
        var plan = ExamplePlans.Of(example);
        var colours = plan.Wires.ToDictionary(w => w.Id, w => w.Colour, StringComparer.Ordinal);
        var beside = 0;
        foreach (var sheet in WallChart.Compose(plan, [], new SheetOptions()).Sheets)
        {
            using var svg = new MemoryStream(SvgWriter.Write(sheet));
            var pairs = Beside(XDocument.Load(svg));
            beside += pairs.Count;
            var alike = pairs.Count(p => colours[p.A] != colours[p.B] && Apart(WireColour.Parse(colours[p.A]), WireColour.Parse(colours[p.B])) < Enough);
            var told = SheetRules.Check(plan, [sheet]).Where(f => f.Rule == "neighbours-look-alike").Select(f => int.Parse(Number().Match(f.Message).Groups[1].Value, CultureInfo.InvariantCulture)).Sum();
            Assert.Equal(alike, told);
        }

        Assert.True(beside > 5, $"{beside} pairs side by side are too few to tell anything");
    }

    [GeneratedRegex("(\\d+) pairs? of wires")]
    private static partial Regex Number();

    [GeneratedRegex("([MLHVA])([^MLHVA]*)")]
    private static partial Regex Step();

    private static HashSet<(string A, string B)> Beside(XDocument svg)
    {
        var legs = new List<(string Wire, bool IsLevel, double Across, double From, double To)>();
        foreach (var path in svg.Descendants().Where(e => e.Name.LocalName == "path" && e.Attribute("data-wire") is not null && e.Attribute("d") is not null))
        {
            double x = 0, y = 0;
            foreach (Match step in Step().Matches(path.Attribute("d")!.Value))
            {
                double[] n = [.. step.Groups[2].Value.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
                var (toX, toY) = step.Groups[1].Value switch { "H" => (n[0], y), "V" => (x, n[0]), _ => (n[^2], n[^1]) };
                if (step.Groups[1].Value is "H" or "V" or "L" && (x == toX || y == toY))
                {
                    var isLevel = y == toY;
                    legs.Add((path.Attribute("data-wire")!.Value, isLevel, isLevel ? y : x, isLevel ? Math.Min(x, toX) : Math.Min(y, toY), isLevel ? Math.Max(x, toX) : Math.Max(y, toY)));
                }

                (x, y) = (toX, toY);
            }
        }

        var pairs = new HashSet<(string, string)>();
        foreach (var a in legs)
        {
            foreach (var b in legs.Where(b => string.CompareOrdinal(a.Wire, b.Wire) < 0 && a.IsLevel == b.IsLevel && Math.Abs(a.Across - b.Across) < BesideMm && Math.Min(a.To, b.To) - Math.Max(a.From, b.From) >= LeastMm))
            {
                pairs.Add((a.Wire, b.Wire));
            }
        }

        return pairs;
    }

    // what differs most, base or tracer, to the eye that sees least of it
    private static double Apart(WireColour a, WireColour b) => Eyes.Min(eye => Math.Max(Distance(a.Base.Ink, b.Base.Ink, eye), Distance((a.Tracer ?? a.Base).Ink, (b.Tracer ?? b.Base).Ink, eye)));

    private static double Distance(Rgb a, Rgb b, double[] eye) => Math.Sqrt(Lab(a, eye).Zip(Lab(b, eye)).Sum(p => (p.First - p.Second) * (p.First - p.Second)));

    private static double[] Lab(Rgb colour, double[] eye)
    {
        double[] light = [.. new[] { colour.R, colour.G, colour.B }.Select(c => c / 255.0).Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4))];
        double[] seen = [.. Enumerable.Range(0, 3).Select(row => Math.Clamp(Enumerable.Range(0, 3).Sum(k => eye[(3 * row) + k] * light[k]), 0, 1))];
        double[] xyz =
        [
            ((0.4124564 * seen[0]) + (0.3575761 * seen[1]) + (0.1804375 * seen[2])) / 0.95047,
            (0.2126729 * seen[0]) + (0.7151522 * seen[1]) + (0.0721750 * seen[2]),
            ((0.0193339 * seen[0]) + (0.1191920 * seen[1]) + (0.9503041 * seen[2])) / 1.08883,
        ];
        double[] f = [.. xyz.Select(t => t > 0.008856 ? Math.Cbrt(t) : (7.787 * t) + (16.0 / 116))];
        return [(116 * f[1]) - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])];
    }
}
