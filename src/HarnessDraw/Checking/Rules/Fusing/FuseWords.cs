using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

/// <summary>What the rules of protection say and look up in common.</summary>
internal static class FuseWords
{
    public static SourceSpan? At(RuleContext context, string fuse) => context.Harness.Protections.FirstOrDefault(p => p.Id == fuse)?.At;

    /// <summary>Standard ratings of the fuse's kind, rising.</summary>
    public static double[] Ratings(RuleContext context, ProtectionKind kind) =>
        [.. context.Harness.Catalogue.Fuses.Where(s => s.Kind == kind).SelectMany(s => s.Ratings).Select(r => r.RatingA).Distinct().Order()];

    /// <summary>'Largest safe fuse: 10 A.', or that there is none.</summary>
    public static string Largest(RuleContext context, FuseChoice fuse, double ampsBorne)
    {
        var best = fuse.LargestA is { } known && known <= ampsBorne ? known : Ratings(context, fuse.Kind).LastOrDefault(r => r <= ampsBorne);
        return best > 0 ? $"Largest safe fuse: {Figure.Amps(best)}." : "No standard fuse is small enough.";
    }

    /// <summary>The next size of the same family whose single-wire current, derated as this wire is, bears the fuse.</summary>
    public static string BiggerWire(RuleContext context, Wire wire, double amps)
    {
        if (context.SizeOf(wire)?.AirAmpacityA is not { } inAir || wire.AmpacityA is not { } borne)
        {
            return "";
        }

        var derating = borne / inAir;
        var size = context.TypeOf(wire)?.Sizes.FirstOrDefault(s => s.AreaMm2 > wire.AreaMm2 && s.AirAmpacityA * derating >= amps);
        return size is null ? "" : $" Or fit {size.Label} mm² wire.".Replace("AWG mm²", "AWG", StringComparison.Ordinal);
    }
}
