using HarnessDraw.Model;

namespace HarnessDraw.Tests.Model;

/// <summary>A short catalogue of invented parts; the wire figures are the thin-wall rows of IEC 60228 and ISO 6722 data sheets.</summary>
public static class SmallCatalogue
{
    private const string Invented = "invented for tests";

    public static Catalogue Catalogue { get; } = new()
    {
        WireTypes = [ThinWall],
        Connectors = [Bulkhead, LampPlug, Plug2, RelayBase],
        Terminals =
        [
            Terminal("bulkhead-2.8-s", "bulkhead", "2.8", 0.5, 1.0, 1.4, 2.2, 15),
            Terminal("bulkhead-2.8-l", "bulkhead", "2.8", 1.5, 2.5, 2.1, 3.1, 15),
            Terminal("bulkhead-9.5-s", "bulkhead", "9.5", 2.5, 4, 2.7, 4.0, 50),
            Terminal("bulkhead-9.5-l", "bulkhead", "9.5", 6, 10, 4.0, 6.2, 50),
            Terminal("blade-6.3-s", "blade", "6.3", 0.5, 1.5, 1.4, 2.5, 25),
            Terminal("blade-6.3-l", "blade", "6.3", 2, 6, 2.6, 4.6, 30),
            Terminal("socket-2.8-s", "socket", "2.8", 0.5, 1.5, 1.4, 2.5, 15) with { Sealed = true },
            Terminal("socket-2.8-l", "socket", "2.8", 2, 4, 2.6, 3.8, 20) with { Sealed = true },
            .. new[] { "M6", "M8" }.SelectMany(thread => new[]
            {
                Ring($"ring-{thread}-1", thread, 0.5, 2.5, 60), Ring($"ring-{thread}-6", thread, 3, 6, 90),
                Ring($"ring-{thread}-16", thread, 8.5, 16, 200), Ring($"ring-{thread}-70", thread, 25, 70, 400),
            }),
        ],
        Seals = [new("seal-2.8", "Seal, small", "2.8", 1.4, 3.8, Invented)],
        Plugs = [new("plug-2.8", "Cavity plug 2.8", "2.8", Invented), new("plug-9.5", "Cavity plug 9.5", "9.5", Invented)],
        Splices =
        [
            new("splice-4", "Crimp splice, open", 0.8, 4, 7.5, false, Invented), new("splice-10", "Crimp splice, open, large", 3, 14, 9, false, Invented),
            new("splice-4-sealed", "Crimp splice, sealed", 0.8, 4, 7.5, true, Invented), new("splice-10-sealed", "Crimp splice, sealed, large", 3, 14, 9, true, Invented),
        ],
        Fuses =
        [
            new("blade", "Blade fuse", ProtectionKind.Blade, [.. new double[] { 3, 5, 7.5, 10, 15, 20, 25, 30, 40 }.Select(a => new FuseRating(a, null, null))], "ISO 8820-3 ratings"),
            new("bolt-in", "Bolt-in fuse", ProtectionKind.BoltIn, [.. new double[] { 40, 60, 80, 100, 125, 150, 175 }.Select(a => new FuseRating(a, null, null))], "ISO 8820-5 ratings"),
        ],
        Coverings =
        [
            new("tape", "Cloth tape", "tape", 0, 40, 0.4, 105, Invented), new("tube-7", "Split tube 7", "tube", 3, 6.5, 0.8, 125, Invented),
            new("tube-13", "Split tube 13", "tube", 6.5, 12, 0.9, 125, Invented), new("tube-22", "Split tube 22", "tube", 12, 20, 1, 125, Invented),
        ],
        Grommets = [new("grommet-62", "Grommet 62", 62, 40, Invented)],
    };

    private static WireType ThinWall => new("thin-wall", "Thin-wall PVC", 105, false,
    [
        Size("0.5", 0.5, 37.1, 1.7, 11), Size("0.75", 0.75, 24.7, 1.9, 14), Size("1", 1, 18.5, 2.1, 16.5), Size("1.5", 1.5, 12.7, 2.4, 21),
        Size("2", 2, 9.42, 2.8, 25), Size("2.5", 2.5, 7.6, 3, 29), Size("3", 3, 6.15, 3.4, 33), Size("4", 4, 4.71, 3.7, 39), Size("6", 6, 3.14, 4.3, 50),
        Size("8.5", 8.5, 2.2, 5.6, 63), Size("10", 10, 1.82, 6, 70), Size("16", 16, 1.16, 7.9, 110), Size("25", 25, 0.743, 9.4, 170),
        Size("35", 35, 0.527, 10.8, 240), Size("50", 50, 0.368, 12.8, 300),
    ], "ISO 6722 resistance as commonly reprinted; supplier current ratings")
    { IsUsual = true };

    private static ConnectorPart Bulkhead => new("bulkhead-12", "Bulkhead connector, 12 cavities", 70, 50,
    [
        .. Enumerable.Range(0, 6).Select(i => new CavityPart($"A{i + 1}", 10 + (i % 3 * 10), 15 + (i / 3 * 15), i == 0 ? "9.5" : "2.8") { Half = "A" }),
        .. Enumerable.Range(0, 6).Select(i => new CavityPart($"B{i + 1}", 45 + (i % 3 * 10), 15 + (i / 3 * 15), "2.8") { Half = "B" }),
    ], false, Invented)
    { TerminalFamilies = ["bulkhead"], CentreBolt = true, BoltTorqueNm = 4, IsBulkhead = true, Key = "left", LargestPassMm = 75, TotalA = 120 };

    private static ConnectorPart LampPlug => new("lamp-3", "Lamp plug, 3 cavities", 24, 14,
        [new("56a", 5, 7, "6.3"), new("56b", 12, 7, "6.3"), new("31", 19, 7, "6.3")], false, Invented)
    { TerminalFamilies = ["blade"] };

    private static ConnectorPart Plug2 => new("sealed-2", "Sealed plug, 2 cavities", 18, 14,
        [new("1", 5, 7, "2.8"), new("2", 12, 7, "2.8")], true, Invented)
    { TerminalFamilies = ["socket"], Key = "bottom" };

    private static ConnectorPart RelayBase => new("relay-base", "Relay base", 28, 28,
        [new("30", 7, 7, "6.3"), new("85", 21, 7, "6.3"), new("86", 7, 21, "6.3"), new("87", 21, 21, "6.3")], false, Invented)
    { TerminalFamilies = ["blade"] };

    private static WireSize Size(string label, double area, double milliohm, double od, double amps) =>
        new(label, area, null, milliohm, od, amps, null, "ISO 6722 as commonly reprinted");

    private static TerminalPart Terminal(string id, string family, string size, double min, double max, double minOd, double maxOd, double amps) =>
        new(id, $"{family} {size} {min}-{max} mm2", family, size, false, min, max, minOd, maxOd, 5.5, amps, Invented);

    private static TerminalPart Ring(string id, string thread, double min, double max, double amps) =>
        new(id, $"Ring {thread}, {min}-{max} mm2", "ring", thread, true, min, max, 1.2, 14, 9, amps, Invented);
}
