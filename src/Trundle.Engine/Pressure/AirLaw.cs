using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>How the pressure in a closed tyre follows temperature and height. The gauge shows the difference to the air around it; the law holds for the absolute pressure.</summary>
public static class AirLaw
{
    /// <summary>The air's pressure at sea level.</summary>
    public static AbsolutePressure SeaLevel { get; } = Figures.Of("pressure.atmosphere-sealevel").As<AbsolutePressure>();

    /// <summary>The air's pressure at a height above the sea.</summary>
    /// <param name="height">From -450 m to 6000 m; the standard's law is for the lowest 11 km.</param>
    /// <source>ISO 2533 International Standard Atmosphere (from memory): 101.325 kPa (1 - 2.25577e-5 h)^5.25588</source>
    public static AbsolutePressure At(Length height) =>
        SeaLevel * Math.Pow(1 - (Figures.Of("pressure.atmosphere-lapse").Value * height.Metres), Figures.Of("pressure.atmosphere-exponent").Value);

    /// <summary>
    /// What the gauge shows after a change of temperature and height with no air let in or out.
    /// </summary>
    /// <param name="gauge">Gauge pressure where it was set.</param>
    /// <param name="set">Temperature of the tyre's air where it was set.</param>
    /// <param name="used">Temperature of the tyre's air where it is used.</param>
    /// <param name="airSet">Air pressure where it was set.</param>
    /// <param name="airUsed">Air pressure where it is used.</param>
    /// <returns>(P + Pa₁) T₂/T₁ − Pa₂ with kelvin temperatures. The tyre's volume is taken as rigid.</returns>
    /// <source>ideal gas at constant volume; calculated</source>
    public static GaugePressure After(GaugePressure gauge, Temperature set, Temperature used, AbsolutePressure airSet, AbsolutePressure airUsed) =>
        (gauge.In(airSet) * (used.Kelvins / set.Kelvins)).Above(airUsed);
}
