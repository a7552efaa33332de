using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>A motor's terminal with two feeds in one build, or a motor of which a build feeds no terminal.</summary>
internal sealed class MotorFedTwice : IDesignRule
{
    public RuleInfo Info { get; } = new("motor-fed-twice", "Variants of a motor's feed do not exclude each other", Severity.Error, Consequence.Fire, "common practice, no source",
        "Two feeds on one terminal join two fuses: neither protects its wire, and one switch feeds back through the other. With none the motor stands still.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var thing in context.Harness.Things.Where(t => t.Kind != ThingKind.Starter && t.Elements.Any(e => e.Kind == ElementKind.Motor)))
        {
            var pins = thing.Elements.Where(e => e.Kind == ElementKind.Motor).Select(e => e.PinA).Distinct(StringComparer.Ordinal).ToList();
            var feeds = pins.SelectMany(pin => context.Harness.Circuits.Where(c => !c.IsReturn && c.Duty != Duty.Signal && c.Feeds.Any(f => f.Thing == thing.Id && f.Pin == pin)).Select(c => (Pin: pin, Circuit: c))).ToList();
            foreach (var (pin, a, b) in Pairs(feeds).Where(p => context.CanMeet(p.A.OnlyWith, p.B.OnlyWith)))
            {
                yield return context.Found(Info, $"{a.Id} and {b.Id} both feed {PointWords.Of(thing.Id, pin)} in one build.", "Let each be built with its own choice only (only-with), and fuse the fast speed by itself.", [thing.Id, a.Id, b.Id], a.OnlyWith.And(b.OnlyWith), b.At);
            }

            ImmutableArray<ImmutableSortedDictionary<string, string>> fitted = [.. context.Plan.Builds.Where(thing.OnlyWith.Holds)];
            ImmutableArray<ImmutableSortedDictionary<string, string>> none = [.. fitted.Where(b => feeds.Count > 0 && !feeds.Any(f => f.Circuit.OnlyWith.Holds(b)))];
            if (!none.IsEmpty)
            {
                var only = SmallestBuilds.Of(none, [.. fitted.Except(none)]);
                yield return context.Found(Info, $"With {only} nothing feeds {thing.Id}: {Wording.List(feeds.Select(f => f.Circuit.Id))} belong to other builds.", "Give the build a feed, or leave the motor out of it.", [thing.Id, .. feeds.Select(f => f.Circuit.Id)], only, thing.At);
            }
        }
    }

    private static IEnumerable<(string Pin, Circuit A, Circuit B)> Pairs(List<(string Pin, Circuit Circuit)> feeds) =>
        from a in feeds from b in feeds where a.Pin == b.Pin && string.CompareOrdinal(a.Circuit.Id, b.Circuit.Id) < 0 select (a.Pin, a.Circuit, b.Circuit);
}
