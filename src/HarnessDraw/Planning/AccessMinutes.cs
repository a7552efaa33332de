using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>
/// Minutes to get a meter at a point with everything plugged in. Common practice, no source: fuse 0.5, lamp plug or stud 1, connector in the bay 2 (the bay
/// side of the firewall is one), the firewall connector's rear, reached from the cabin, 5, under the dash or behind a panel 10, wrap opened 25.
/// </summary>
public static class AccessMinutes
{
    public const double Fuse = 0.5;
    public const double Open = 1;
    public const double Bay = 2;
    public const double FirewallRear = 5;
    public const double Panel = 10;
    public const double Wrap = 25;

    /// <param name="index">The harness.</param>
    /// <param name="end">The point; a splice has no pin.</param>
    /// <param name="cabinSide">Of a connector in the firewall the side in the cabin.</param>
    internal static double Of(HarnessIndex index, WireEnd end, bool cabinSide)
    {
        var thing = index.Thing(end.At);
        if (end.Pin is null || thing is null)
        {
            return thing is null ? Wrap : Open;
        }

        // lids are made to be opened, wherever they are
        if (thing.Kind is ThingKind.Fuse || index.Protection(thing.Id) is not null)
        {
            return Fuse;
        }

        if (thing.Kind == ThingKind.Mate)
        {
            return cabinSide ? FirewallRear : Bay;
        }

        if (thing.Side == Side.Cabin || index.Place(thing.Place)?.Behind is not null)
        {
            return Panel;
        }

        return thing.Kind == ThingKind.Lamp || index.PinOf(new(end.At, end.Pin))?.Style is PinStyle.Stud or PinStyle.Blade ? Open : Bay;
    }
}
