using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>From the words of the description to the values of the model. Words that are wrong were reported by the shape and give the usual value.</summary>
public static class ChoiceWords
{
    public static Exposure Exposure(string? word) => word switch
    {
        "spray" => Model.Exposure.Spray,
        "splash" => Model.Exposure.Splash,
        "fuel" => Model.Exposure.Fuel,
        "acid" => Model.Exposure.Acid,
        _ => Model.Exposure.Dry,
    };

    public static Side Side(string? word) => word == "cabin" ? Model.Side.Cabin : Model.Side.Bay;

    /// <summary>'always' is the off position: live whatever the key says.</summary>
    public static KeyPosition Key(string? word) => word switch
    {
        "accessory" => KeyPosition.Accessory,
        "run" => KeyPosition.Run,
        "start" => KeyPosition.Start,
        _ => KeyPosition.Off,
    };

    public static EngineState Engine(string? word) => word switch
    {
        "cranking" => EngineState.Cranking,
        "running" => EngineState.Running,
        _ => EngineState.Stopped,
    };

    public static ProtectionKind Protection(string? word) => word switch
    {
        "bolt-in" => ProtectionKind.BoltIn,
        "fusible link" => ProtectionKind.FusibleLink,
        "breaker" => ProtectionKind.Breaker,
        _ => ProtectionKind.Blade,
    };

    public static ThingKind? Kind(string? word) => word switch
    {
        "load" => ThingKind.Load,
        "lamp" => ThingKind.Lamp,
        "motor" => ThingKind.Motor,
        "sender" => ThingKind.Sender,
        "starter" => ThingKind.Starter,
        "relay" => ThingKind.Relay,
        "switch" => ThingKind.Switch,
        "control unit" => ThingKind.ControlUnit,
        "stud" => ThingKind.Stud,
        "bus bar" => ThingKind.BusBar,
        "fuse panel" => ThingKind.FusePanel,
        "ground point" => ThingKind.GroundPoint,
        _ => null,
    };
}
