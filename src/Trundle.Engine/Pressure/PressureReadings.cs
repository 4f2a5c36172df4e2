using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>One pressure of a tyre with its time and what has to be known to compare it with another.</summary>
/// <param name="At">When, by one clock for all readings.</param>
/// <param name="Value">What the gauge showed; where air was let in or out, what it showed after that.</param>
/// <param name="Tyre">Temperature of the air in the tyre: that of the air around it where it has stood for hours.</param>
/// <param name="Air">The air's own pressure at that place, from its height or a barometer.</param>
/// <param name="Barometer">True where a barometer was read.</param>
/// <param name="AirChanged">Air was let in or out since the reading before, or the tyre was off its rim: a new level begins.</param>
public sealed record DatedPressure(DateTime At, GaugePressure Value, Temperature Tyre, AbsolutePressure Air, bool Barometer, bool AirChanged);

/// <summary>How well the readings are known.</summary>
/// <param name="GreatestError">The gauge's greatest error.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="Repeatability">One standard deviation of repeated readings with one and the same gauge, or null. Where it is given, the rest of the gauge's error is common to all readings and falls out of the loss.</param>
/// <param name="Thermometer">Greatest error of the tyre's temperature.</param>
/// <param name="ThermometerSource">Where that comes from.</param>
public sealed record ReadingAccuracy(GaugePressure GreatestError, Source Source, GaugePressure? Repeatability, TemperatureDifference Thermometer, Source ThermometerSource)
{
    /// <summary>The accuracy of a gauge of which only its kind is known: the greatest error that the law lets it have at a pressure.</summary>
    /// <param name="most">The highest pressure read.</param>
    /// <param name="gauge">The gauge's own greatest error, or null.</param>
    /// <param name="repeatability">As above, or null.</param>
    /// <param name="thermometer">Greatest error of the temperatures, or null.</param>
    /// <source>Directive 86/217/EEC, Annex 2.1 (from memory): 8 kPa up to 400 kPa, 16 up to 1000, 25 above</source>
    public static ReadingAccuracy Of(GaugePressure most, GaugePressure? gauge, GaugePressure? repeatability, TemperatureDifference? thermometer)
    {
        var byLaw = Figures.Of(most.Kilopascals > 1000 ? "leak.gauge-high" : most.Kilopascals > 400 ? "leak.gauge-middle" : "leak.gauge-low");
        var byPractice = Figures.Of("leak.thermometer");
        return new ReadingAccuracy(
            gauge ?? byLaw.As<GaugePressure>(),
            gauge is null ? byLaw.Source : Source.Entered("the gauge's greatest error, as entered"),
            repeatability,
            thermometer ?? byPractice.As<TemperatureDifference>(),
            thermometer is null ? byPractice.Source : Source.Entered("the temperatures' greatest error, as entered"));
    }
}
