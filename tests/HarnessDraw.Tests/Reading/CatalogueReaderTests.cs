using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Reading;

public sealed class CatalogueReaderTests
{
    private static readonly Catalogue BuiltIn = CatalogueReader.BuiltIn;

    [Fact]
    public void The_built_in_catalogue_has_every_kind_of_part()
    {
        Assert.True(BuiltIn.WireTypes.Length >= 3);
        Assert.Single(BuiltIn.WireTypes, w => w.IsUsual);
        Assert.All([1, 2, 3, 4, 6, 8, 10, 12], n => Assert.All(["plain", "sealed"], kind => Assert.Contains(BuiltIn.Connectors, c => c.Id == $"{kind}-{n}" && c.Cavities.Length == n)));
        Assert.Contains(BuiltIn.Connectors, c => c.Id == "bulkhead-44" && c.Cavities.Length == 44 && c.Cavities.Count(x => x.Half == "A") == 22);
        Assert.Contains(BuiltIn.Connectors, c => c.Id == "bulkhead-24" && c.Cavities.Length == 24 && c.IsBulkhead && c.CentreBolt && c.BoltTorqueNm == 4);
        Assert.NotEmpty(BuiltIn.Seals);
        Assert.NotEmpty(BuiltIn.Plugs);
        Assert.NotEmpty(BuiltIn.Splices);
        Assert.NotEmpty(BuiltIn.Coverings);
        Assert.NotEmpty(BuiltIn.Grommets);
    }

    [Fact]
    public void Every_row_names_its_source()
    {
        var sources = BuiltIn.WireTypes.SelectMany(w => w.Sizes.Select(s => s.Source).Append(w.Source))
            .Concat(BuiltIn.Connectors.Select(c => c.Source)).Concat(BuiltIn.Terminals.Select(t => t.Source)).Concat(BuiltIn.Seals.Select(s => s.Source))
            .Concat(BuiltIn.Plugs.Select(p => p.Source)).Concat(BuiltIn.Splices.Select(s => s.Source)).Concat(BuiltIn.Fuses.Select(f => f.Source))
            .Concat(BuiltIn.Coverings.Select(c => c.Source)).Concat(BuiltIn.Grommets.Select(g => g.Source));
        Assert.All(sources, s => Assert.True(s.Length > 8, s));
    }

    [Fact]
    public void Cavities_lie_inside_their_body_and_keep_at_least_the_larger_contact_size_apart()
    {
        foreach (var connector in BuiltIn.Connectors)
        {
            for (var i = 0; i < connector.Cavities.Length; i++)
            {
                var a = connector.Cavities[i];
                var sizeA = double.Parse(a.Size, System.Globalization.CultureInfo.InvariantCulture);
                Assert.InRange(a.Xmm, sizeA / 2, connector.WidthMm - (sizeA / 2));
                Assert.InRange(a.Ymm, sizeA / 2, connector.HeightMm - (sizeA / 2));
                foreach (var b in connector.Cavities.Take(i))
                {
                    var sizeB = double.Parse(b.Size, System.Globalization.CultureInfo.InvariantCulture);
                    var apartMm = Math.Sqrt(Math.Pow(a.Xmm - b.Xmm, 2) + Math.Pow(a.Ymm - b.Ymm, 2));
                    Assert.True(apartMm + 1e-9 >= ((sizeA + sizeB) / 2) + Math.Max(sizeA, sizeB), $"{connector.Id}: {a.Name} and {b.Name} are {apartMm:F1} mm apart");
                }
            }
        }
    }

    [Fact]
    public void The_halves_of_a_bulkhead_connector_are_not_alike()
    {
        foreach (var connector in BuiltIn.Connectors.Where(c => c.IsBulkhead))
        {
            var places = connector.Cavities.Select(c => (c.Xmm, c.Ymm)).ToHashSet();
            Assert.Contains(connector.Cavities, c => !places.Contains((connector.WidthMm - c.Xmm, connector.HeightMm - c.Ymm)));
            Assert.NotNull(connector.Key);
        }
    }

    [Fact]
    public void Every_cavity_has_a_terminal_for_every_size_from_half_a_square_millimetre_to_what_its_contact_bears()
    {
        var usual = BuiltIn.WireTypes.Single(w => w.IsUsual);
        foreach (var (family, size, smallest, largest) in BuiltIn.Connectors.SelectMany(c => c.TerminalFamilies.SelectMany(f => c.Cavities.Select(x => (f, x.Size)))).Distinct()
            .Select(p => (p.f, p.Size, p.Size == "9.5" ? 1.5 : 0.5, p.Size switch { "1.5" => 1.5, "2.8" => 4.0, "6.3" => 6.0, _ => 10.0 })))
        {
            foreach (var wire in usual.Sizes.Where(s => s.AreaMm2 >= smallest && s.AreaMm2 <= largest))
            {
                Assert.Contains(BuiltIn.Terminals, t => t.Family == family && t.Size == size && t.MinAreaMm2 <= wire.AreaMm2 && wire.AreaMm2 <= t.MaxAreaMm2 && t.MinInsulationMm <= wire.OutsideMm && wire.OutsideMm <= t.MaxInsulationMm);
            }
        }
    }

    [Fact]
    public void Sealed_contacts_have_a_seal_for_every_wire_they_take_and_a_plug()
    {
        var sizes = BuiltIn.WireTypes.SelectMany(w => w.Sizes).ToArray();
        foreach (var terminal in BuiltIn.Terminals.Where(t => t.Sealed))
        {
            foreach (var wire in sizes.Where(w => terminal.MinAreaMm2 <= w.AreaMm2 && w.AreaMm2 <= terminal.MaxAreaMm2 && w.OutsideMm >= terminal.MinInsulationMm && w.OutsideMm <= terminal.MaxInsulationMm))
            {
                Assert.Contains(BuiltIn.Seals, s => s.Size == terminal.Size && s.MinInsulationMm <= wire.OutsideMm && wire.OutsideMm <= s.MaxInsulationMm);
            }

            Assert.Contains(BuiltIn.Plugs, p => p.Size == terminal.Size);
        }
    }

    [Fact]
    public void Rings_leave_no_gap_between_half_a_square_millimetre_and_the_largest_of_their_stud()
    {
        var usual = BuiltIn.WireTypes.Single(w => w.IsUsual);
        foreach (var rings in BuiltIn.Terminals.Where(t => t.Ring).GroupBy(t => t.Size))
        {
            foreach (var wire in usual.Sizes.Where(s => s.AreaMm2 >= rings.Min(r => r.MinAreaMm2) && s.AreaMm2 <= rings.Max(r => r.MaxAreaMm2)))
            {
                Assert.Contains(rings, r => r.MinAreaMm2 <= wire.AreaMm2 && wire.AreaMm2 <= r.MaxAreaMm2 && r.MinInsulationMm <= wire.OutsideMm && wire.OutsideMm <= r.MaxInsulationMm);
            }
        }
    }

    [Fact]
    public void A_users_row_replaces_the_row_of_its_id_and_a_new_row_is_added()
    {
        var outcome = CatalogueReader.Read([("my.yaml", """
            plugs:
              plug-2.8: { title: Blue plug, size: 2.8 mm, source: own stock }
              plug-7: { title: Odd plug, size: 7 mm, source: own stock }
            """)]);
        Assert.Empty(outcome.Diagnostics);
        Assert.Equal(BuiltIn.Plugs.Length + 1, outcome.Value!.Plugs.Length);
        Assert.Equal("Blue plug", outcome.Value.Plugs.Single(p => p.Id == "plug-2.8").Title);
        Assert.Equal("plug-7", outcome.Value.Plugs[^1].Id);
    }

    [Fact]
    public void A_users_wire_size_joins_the_family_in_order_of_area_and_keeps_its_own_source()
    {
        var outcome = CatalogueReader.Read([("my.yaml", """
            wire:
              thin-wall-105:
                sizes:
                  8.5 mm2: { resistance: 2.2 mohm/m, outside: 5.6 mm, amps: 63 A, source: supplier's sheet }
                  10 mm2: { resistance: 1.9 mohm/m, outside: 6.1 mm }
            """)]);
        Assert.Empty(outcome.Diagnostics);
        var family = outcome.Value!.WireTypes.Single(w => w.IsUsual);
        var labels = family.Sizes.Select(s => s.Label).ToList();
        Assert.Equal(["6.0", "8.5", "10"], labels.GetRange(labels.IndexOf("6.0"), 3));
        Assert.Equal(105, family.MaxC);
        Assert.Equal("supplier's sheet", family.Sizes.Single(s => s.Label == "8.5").Source);
        Assert.Equal((1.9, null, "given in the parts file, no source named"), family.Sizes.Where(s => s.Label == "10").Select(s => (s.MilliohmPerM, s.AirAmpacityA, s.Source)).Single());
    }

    [Fact]
    public void A_users_family_may_become_the_usual_one()
    {
        var outcome = CatalogueReader.Read([("my.yaml", "wire: { awg-cross-linked-125: { usual: yes, sizes: {} } }")]);
        Assert.Equal("awg-cross-linked-125", outcome.Value!.WireTypes.Single(w => w.IsUsual).Id);
        Assert.Equal("16 AWG", outcome.Value.WireTypes.Single(w => w.IsUsual).Sizes.Single(s => s.Awg == "16").Label);
    }

    [Theory]
    [InlineData("plugs: { p: { title: P, siz: 2.8 mm, source: s } }", DiagnosticCodes.UnknownKey, 1, 25)]
    [InlineData("plugs: { p: { title: P, size: 2.8, source: s } }", DiagnosticCodes.Quantity, 1, 31)]
    [InlineData("seals: { s: { title: S, size: 2.8 mm, insulation: 3 to 1 mm, source: s } }", DiagnosticCodes.Quantity, 1, 51)]
    [InlineData("seals: { s: { title: S, size: 2.8 mm, insulation: 3 mm, source: s } }", DiagnosticCodes.Quantity, 1, 51)]
    [InlineData("terminals: { t: { title: T, family: f, crimp: 1 to 2 mm2, insulation: 1 to 2 mm, strip: 5 mm, current: 5 A, source: s } }", DiagnosticCodes.MissingKey, 1, 17)]
    [InlineData("connectors: { c: { title: C, body: 9 x 9 mm, terminals: [tanf], source: s, cavities: [{ names: [1], x: [4], y: 4, size: 2.8 mm }] } }", DiagnosticCodes.UnknownName, 1, 58)]
    [InlineData("connectors: { c: { title: C, body: 9 x 9 mm, terminals: [tang], source: s, cavities: [{ names: [1, 1], x: [4, 6], y: 4, size: 2.8 mm }] } }", DiagnosticCodes.DuplicateName, 1, 100)]
    [InlineData("connectors: { c: { title: C, body: 9 x 9 mm, terminals: [tang], source: s, cavities: [{ names: [1, 2], x: [4], y: 4, size: 2.8 mm }] } }", DiagnosticCodes.ListLength, 1, 87)]
    [InlineData("wire: { thin-wall-105: { sizes: { 16 AWG: { resistance: 14.6 mohm/m, outside: 3 mm } } } }", DiagnosticCodes.Quantity, 1, 35)]
    [InlineData("wire: { mine: { sizes: {} } }", DiagnosticCodes.MissingKey, 1, 9)]
    public void A_mistake_is_reported_where_it_stands(string text, string code, int line, int column)
    {
        var outcome = CatalogueReader.Read([("my.yaml", text)]);
        Assert.Contains(outcome.Diagnostics, d => d.Code == code && d.At is { File: "my.yaml" } at && at.Line == line && at.Column == column);
    }
}
