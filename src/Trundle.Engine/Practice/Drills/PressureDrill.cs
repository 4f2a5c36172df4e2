using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>One filling at other temperatures, by the engine's law of air.</summary>
internal static class PressureDrill
{
    public static Drill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "pressure");
        var set = GaugePressure.FromKilopascals(stream.Between(20, 32) * 10);
        var (inside, outside, warm) = (stream.Between(17, 24), stream.Between(-20, 6), stream.Between(38, 58));
        var cold = At(outside);
        var driven = At(warm);
        var source = new Source("ideal gas at constant volume; calculated", SourceStatus.Calculated);
        return new Drill(DrillKind.PressureAtTemperature, seed, DrillList.Title(DrillKind.PressureAtTemperature),
        [
            new("set in the bay", $"{set.Text("kPa", 0)} at {inside} °C, tyre as cold as the bay"),
            new("next morning outside", $"{outside} °C, at the same height, no air let in or out"),
            new("after driving", $"the tyre's air at {warm} °C"),
        ],
        [
            Asking.Quantity(new("cold", "What the gauge shows outside in the morning.", 35, true), cold, "kPa", 0, 3, source, "The law holds for the absolute pressure: gauge plus the air's, times the ratio of the kelvins, less the air's."),
            Asking.Quantity(new("warm", "What the gauge shows after driving.", 30, false), driven, "kPa", 0, 3, source, "The law holds for the absolute pressure: gauge plus the air's, times the ratio of the kelvins, less the air's."),
            Asking.Choice(new("act", "After driving the gauge is above the placard's cold figure. What is done?", 35, true),
                [new("bleed", "let air out down to the placard"), new("leave", "leave it; set it when the tyre is cold"), new("add", "add air")],
                key => key == "leave",
                key => key == "bleed"
                    ? $"Let out warm, it would be low cold: at {inside} °C it would show about {Bled().Text("kPa", 0)}."
                    : "More air in a warm tyre may pass the maximum on the sidewall.",
                Source.CommonPractice),
        ]);

        GaugePressure At(int celsius) => AirLaw.After(set, Temperature.FromDegreesCelsius(inside), Temperature.FromDegreesCelsius(celsius), AirLaw.SeaLevel, AirLaw.SeaLevel);

        GaugePressure Bled() => AirLaw.After(set, Temperature.FromDegreesCelsius(warm), Temperature.FromDegreesCelsius(inside), AirLaw.SeaLevel, AirLaw.SeaLevel);
    }
}
