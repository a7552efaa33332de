using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Published;

/// <summary>The built-in catalogue against figures published elsewhere. Every test names its source; the figures stand in the test.</summary>
public sealed class CatalogueFiguresTests
{
    private const double CopperOhmMm2PerKm = 17.241; // annealed copper at 20 degC, 100 % IACS: IEC 60028, NBS Handbook 100

    private static readonly Catalogue Catalogue = CatalogueReader.BuiltIn;

    private static WireType Family(string id) => Catalogue.WireTypes.Single(w => w.Id == id);

    private static WireSize Awg(string gauge) => Family("awg-cross-linked-125").Sizes.Single(s => s.Awg == gauge);

    /// <summary>ASTM B258: d = 0.127 mm * 92^((36-n)/39). Vehicle strandings of 8 to 18 AWG hold 1 to 10 % less copper than that, never more; battery cable to SAE minima likewise.</summary>
    [Theory]
    [InlineData("18", 18, 0.823)]
    [InlineData("16", 16, 1.309)]
    [InlineData("14", 14, 2.081)]
    [InlineData("12", 12, 3.309)]
    [InlineData("10", 10, 5.261)]
    [InlineData("8", 8, 8.366)]
    [InlineData("6", 6, 13.302)]
    [InlineData("4", 4, 21.151)]
    [InlineData("2", 2, 33.631)]
    [InlineData("1/0", 0, 53.475)]
    [InlineData("2/0", -1, 67.431)]
    public void Vehicle_gauges_hold_less_copper_than_the_formula_of_ASTM_B258(string gauge, int n, double areaMm2)
    {
        var diameterMm = 0.127 * Math.Pow(92, (36 - n) / 39.0);
        Assert.Equal(areaMm2, Math.PI * diameterMm * diameterMm / 4, 0.001);
        Assert.InRange(Awg(gauge).AreaMm2 / areaMm2, 0.89, 1.0);
    }

    /// <summary>NBS Handbook 100 (Copper Wire Tables) by the HyperPhysics page: ohm per 1000 ft of solid wire at 20 degC. A vehicle conductor of the gauge has less copper and more resistance, up to 13 %.</summary>
    [Theory]
    [InlineData("18", 6.385)]
    [InlineData("16", 4.016)]
    [InlineData("14", 2.525)]
    [InlineData("12", 1.588)]
    [InlineData("10", 0.9989)]
    [InlineData("8", 0.6282)]
    [InlineData("6", 0.3951)]
    [InlineData("4", 0.2485)]
    [InlineData("2", 0.1563)]
    public void Vehicle_gauges_have_more_resistance_than_NBS_Handbook_100_gives_for_solid_wire(string gauge, double ohmPer1000Ft)
    {
        var solidMilliohmPerM = ohmPer1000Ft / 0.3048;
        Assert.InRange(Awg(gauge).MilliohmPerM / solidMilliohmPerM, 1.0, 1.13);
    }

    /// <summary>SAE minimum conductor areas in circular mils (marine wire catalogue, appendix 'Wire and Cable Specifications'); 1 cmil = 5.067075e-4 mm2.</summary>
    [Theory]
    [InlineData("18", 1537)]
    [InlineData("16", 2336)]
    [InlineData("14", 3702)]
    [InlineData("12", 5833)]
    [InlineData("10", 9343)]
    [InlineData("8", 14810)]
    [InlineData("6", 24538)]
    [InlineData("4", 37360)]
    [InlineData("2", 62450)]
    [InlineData("1", 77790)]
    [InlineData("1/0", 98980)]
    [InlineData("2/0", 125100)]
    public void Gauge_areas_reach_the_SAE_minimum_and_stay_within_five_percent_of_it(string gauge, double cmil)
    {
        var least = cmil * 5.067075e-4;
        Assert.InRange(Awg(gauge).AreaMm2, least * 0.9995, least * 1.05);
    }

    /// <summary>IEC 60228, bare copper, milliohm a metre at 20 degC: class 2 (stranded) and class 5 (flexible) maxima. ISO 6722 lies between or a little beside: within 5 % of class 5.</summary>
    [Theory]
    [InlineData(0.5, 36.0, 39.0)]
    [InlineData(0.75, 24.5, 26.0)]
    [InlineData(1, 18.1, 19.5)]
    [InlineData(1.5, 12.1, 13.3)]
    [InlineData(2.5, 7.41, 7.98)]
    [InlineData(4, 4.61, 4.95)]
    [InlineData(6, 3.08, 3.30)]
    [InlineData(10, 1.83, 1.91)]
    [InlineData(16, 1.15, 1.21)]
    [InlineData(25, 0.727, 0.780)]
    [InlineData(35, 0.524, 0.554)]
    [InlineData(50, 0.387, 0.386)]
    [InlineData(70, 0.268, 0.272)]
    public void Metric_resistances_agree_with_IEC_60228(double areaMm2, double class2, double class5)
    {
        foreach (var family in new[] { "thin-wall-105", "cross-linked-125" })
        {
            var milliohm = Family(family).Sizes.Single(s => s.AreaMm2 == areaMm2).MilliohmPerM;
            Assert.InRange(milliohm, Math.Min(class2, class5) * 0.95, Math.Max(class2, class5) * 1.001);
        }
    }

    /// <summary>Resistivity of annealed copper, IEC 60028: no real conductor of a true area is better; lay and tolerance add at most 10 %.</summary>
    [Fact]
    public void No_wire_conducts_better_than_annealed_copper()
    {
        foreach (var family in Catalogue.WireTypes)
        {
            foreach (var size in family.Sizes)
            {
                // metric sizes are nominal: 0.35 stands for a conductor of up to 10 % less or more copper
                Assert.InRange(size.MilliohmPerM * size.AreaMm2 / CopperOhmMm2PerKm, size.Awg is null ? 1.02 : 0.999, 1.12);
            }
        }
    }

    /// <summary>Supplier's data sheet 'Automotive Cable Range', thin-wall table: largest diameter and current.</summary>
    [Theory]
    [InlineData(0.5, 1.7, 11)]
    [InlineData(0.75, 1.9, 14)]
    [InlineData(1, 2.1, 16.5)]
    [InlineData(1.5, 2.4, 21)]
    [InlineData(2, 2.8, 25)]
    [InlineData(2.5, 3.0, 29)]
    [InlineData(3, 3.4, 33)]
    [InlineData(4, 3.7, 39)]
    [InlineData(6, 4.3, 50)]
    [InlineData(10, 6.0, 70)]
    public void Thin_wall_diameters_and_currents_are_those_of_the_suppliers_sheet(double areaMm2, double outsideMm, double amps)
    {
        var size = Family("thin-wall-105").Sizes.Single(s => s.AreaMm2 == areaMm2);
        Assert.Equal((outsideMm, (double?)amps), (size.OutsideMm, size.AirAmpacityA));
    }

    /// <summary>Distributor's data sheet 'GXL Medium Insulation Wire' (SAE J1128): nominal outside diameter in inches, printed to 0.001.</summary>
    [Theory]
    [InlineData("20", 0.096)]
    [InlineData("18", 0.102)]
    [InlineData("16", 0.118)]
    [InlineData("14", 0.137)]
    [InlineData("12", 0.160)]
    [InlineData("10", 0.191)]
    [InlineData("8", 0.234)]
    public void Cross_linked_gauge_diameters_are_those_of_the_GXL_sheet(string gauge, double outsideIn) =>
        Assert.Equal(outsideIn * 25.4, Awg(gauge).OutsideMm, 0.06);

    /// <summary>HyperPhysics wire gauge table, chassis wiring column.</summary>
    [Theory]
    [InlineData("20", 11)]
    [InlineData("18", 16)]
    [InlineData("16", 22)]
    [InlineData("14", 32)]
    [InlineData("12", 41)]
    [InlineData("10", 55)]
    [InlineData("8", 73)]
    public void Gauge_currents_are_those_of_the_chassis_wiring_column(string gauge, double amps) => Assert.Equal(amps, Awg(gauge).AirAmpacityA);

    /// <summary>33 CFR 183.425 Table E: 105 degC insulation in engine spaces. A catalogue size must not exceed the published current of the next larger gauge.</summary>
    [Theory]
    [InlineData(16, 136)]
    [InlineData(25, 178)]
    [InlineData(35, 208)]
    [InlineData(50, 242)]
    [InlineData(70, 327)]
    public void Battery_cable_currents_stay_below_the_next_gauge_of_33_CFR_183(double areaMm2, double nextGaugeA)
    {
        var sizes = Family("thin-wall-105").Sizes;
        var at = sizes.IndexOf(sizes.Single(s => s.AreaMm2 == areaMm2));
        Assert.InRange(sizes[at].AirAmpacityA!.Value, sizes[at - 1].AirAmpacityA!.Value, nextGaugeA);
    }

    /// <summary>33 CFR 183.425 Table E, 105 degC: what is published for engine spaces (50 degC) holds there, and outside them (30 degC) by that table's own factor, 1 / 0.85.</summary>
    [Theory]
    [InlineData(16, 114)]
    [InlineData(25, 149)]
    [InlineData(35, 182)]
    [InlineData(50, 231)]
    [InlineData(70, 287)]
    public void Battery_cables_bear_at_50_degC_what_is_published_for_50_degC(double areaMm2, double amps)
    {
        foreach (var (family, maxC) in new[] { ("thin-wall-105", 105), ("cross-linked-125", 125) })
        {
            var size = Family(family).Sizes.Single(s => s.AreaMm2 == areaMm2);
            Assert.Equal((amps, 50.0, 105.0), (size.AirAmpacityA!.Value, size.Basis!.AmbientC, size.Basis.ConductorC));
            // a conductor that may get 20 K warmer bears more by the root of the rises: physics
            Assert.Equal(amps * Math.Sqrt((maxC - 50) / 55.0), Ampacity.DeratedA(size, maxC, 50, 1), 1e-9);
        }

        Assert.Equal(amps / 0.85, Ampacity.DeratedA(Family("thin-wall-105").Sizes.Single(s => s.AreaMm2 == areaMm2), 105, 30, 1), 0.01 * amps);
    }

    /// <summary>Each current names the ambient it holds for, or its source says that none is stated and what is assumed.</summary>
    [Fact]
    public void No_ambient_is_assumed_in_silence()
    {
        foreach (var family in Catalogue.WireTypes.Where(f => f.Sizes.Any(s => s is { AirAmpacityA: not null, Basis: null })))
        {
            Assert.Contains("25", family.Source[family.Source.IndexOf("amps:", StringComparison.Ordinal)..], StringComparison.Ordinal);
            Assert.Contains("assumed", family.Source, StringComparison.Ordinal);
        }
    }

    /// <summary>ISO 8820-3 ratings and colours of regular (type C) blade fuses; colours of 2, 3, 4, 7.5 to 30 and 40 A by a car-fuse colour page, 1, 5 and 35 A: no source seen.</summary>
    [Fact]
    public void Regular_blade_fuses_have_the_ratings_and_colours_of_ISO_8820_3()
    {
        (double, string)[] expected =
        [
            (1, "black"), (2, "grey"), (3, "violet"), (4, "pink"), (5, "tan"), (7.5, "brown"), (10, "red"), (15, "blue"), (20, "yellow"), (25, "clear"),
            (30, "green"), (35, "blue-green"), (40, "orange"),
        ];
        Assert.Equal(expected, Catalogue.Fuses.Single(f => f.Id == "blade").Ratings.Select(r => (r.RatingA, r.Colour!)));
    }

    /// <summary>ISO 8820-3 type F and type E ratings by maker data sheets; SF51 and SF30: no source seen.</summary>
    [Fact]
    public void The_other_fuse_series_have_their_standard_ratings()
    {
        double[] Ratings(string id) => [.. Catalogue.Fuses.Single(f => f.Id == id).Ratings.Select(r => r.RatingA)];
        Assert.Equal([2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30], Ratings("blade-mini"));
        Assert.Equal([20, 25, 30, 35, 40, 50, 60, 70, 80, 100], Ratings("blade-large"));
        Assert.Equal([30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200], Ratings("bolt-in"));
        Assert.Equal([100, 125, 150, 175, 200, 225, 250, 300, 400, 500], Ratings("bolt-in-large"));
    }

    /// <summary>Maker data sheets as transcribed in public notes: cold resistance of a 40 A regular and 30, 35, 40 A large blade fuse, milliohm.</summary>
    [Fact]
    public void Fuse_resistances_are_those_of_the_data_sheets()
    {
        double? Cold(string id, double ratingA) => Catalogue.Fuses.Single(f => f.Id == id).Ratings.Single(r => r.RatingA == ratingA).MilliohmCold;
        Assert.Equal(1.44, Cold("blade", 40)!.Value, 0.001);
        Assert.Equal(1.9, Cold("blade-large", 30)!.Value, 0.001);
        Assert.Equal(1.7, Cold("blade-large", 35)!.Value, 0.001);
        Assert.Equal(1.4, Cold("blade-large", 40)!.Value, 0.001);
    }

    /// <summary>DIN 72552 terminal numbers of the five-pin relay (Wikipedia and mirrors).</summary>
    [Fact]
    public void Relay_sockets_carry_the_numbers_of_DIN_72552()
    {
        Assert.Equal(["30", "85", "86", "87", "87a"], Catalogue.Connectors.Single(c => c.Id == "relay-5").Cavities.Select(c => c.Name).Order(StringComparer.Ordinal));
        Assert.Equal(["30", "85", "86", "87"], Catalogue.Connectors.Single(c => c.Id == "relay-4").Cavities.Select(c => c.Name).Order(StringComparer.Ordinal));
    }
}
