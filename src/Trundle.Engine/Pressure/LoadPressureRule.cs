using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>The law of load over pressure for a class of tyres: L = Lref (P / Pref)ⁿ.</summary>
/// <param name="Name">The class in words.</param>
/// <param name="Reference">Pref: the pressure at which the tyre carries its full load.</param>
/// <param name="Exponent">n.</param>
/// <param name="Source">Where exponent and reference come from; the weaker status of the two.</param>
public sealed record LoadPressureRule(string Name, GaugePressure Reference, double Exponent, Source Source)
{
    /// <summary>
    /// The law for a tyre, by its marking.
    /// </summary>
    /// <param name="marking">The marking.</param>
    /// <param name="markedMaximum">The greatest pressure on its sidewall: for commercial, truck and unknown light-truck ranges it is taken as the pressure of the full load.</param>
    /// <returns>The law, or null where only the maker's table can tell (diagonal, temporary, trailer and motorcycle tyres; no reference pressure known).</returns>
    /// <source>ETRTO car radials read in a textbook; P-metric, commercial and truck exponents from memory; LT-metric fitted to published rows</source>
    public static LoadPressureRule? For(Marking marking, GaugePressure? markedMaximum)
    {
        ArgumentNullException.ThrowIfNull(marking);
        if (marking.Size.Construction != Construction.Radial)
        {
            return null;
        }

        var extra = marking.Service.ExtraLoad || marking.Service.HighLoad;
        return marking.Size.TyreClass switch
        {
            TyreClass.Passenger when marking.Size.Prefix == "P" => extra
                ? Of("P-metric, extra load", "pressure.pmetric-extra-reference", "pressure.pmetric-exponent")
                : Of("P-metric, standard load", "pressure.pmetric-standard-reference", "pressure.pmetric-exponent"),
            TyreClass.Passenger => extra
                ? Of("car radial, extra load", "pressure.euro-extra-reference", "pressure.euro-exponent")
                : Of("car radial, standard load", "pressure.euro-standard-reference", "pressure.euro-exponent"),
            TyreClass.LightTruck => marking.Service.LoadRange switch
            {
                "C" => Of("light truck, load range C", "pressure.lt-c-reference", "pressure.lt-exponent"),
                "D" => Of("light truck, load range D", "pressure.lt-d-reference", "pressure.lt-exponent"),
                "E" => Of("light truck, load range E", "pressure.lt-e-reference", "pressure.lt-exponent"),
                _ => OfMarked("light truck", markedMaximum, "pressure.lt-exponent"),
            },
            TyreClass.Commercial => OfMarked("commercial", markedMaximum, "pressure.commercial-exponent"),
            TyreClass.Truck => OfMarked("truck or bus", markedMaximum, "pressure.truck-exponent"),
            TyreClass.TemporarySpare or TyreClass.SpecialTrailer or TyreClass.Motorcycle => null,
        };
    }

    /// <summary>The least pressure for a load, not rounded.</summary>
    /// <param name="load">What the tyre carries, more than nothing.</param>
    /// <param name="fullLoad">Lref.</param>
    /// <source>P = Pref (L / Lref)^(1/n), the inverse of the law</source>
    public GaugePressure For(Mass load, Mass fullLoad) => Reference * Math.Pow(load / fullLoad, 1 / Exponent);

    /// <summary>The load that a pressure carries.</summary>
    /// <param name="pressure">Gauge pressure, not negative.</param>
    /// <param name="fullLoad">Lref.</param>
    /// <source>L = Lref (P / Pref)ⁿ</source>
    public Mass LoadAt(GaugePressure pressure, Mass fullLoad) => fullLoad * Math.Pow(pressure / Reference, Exponent);

    private static LoadPressureRule Of(string name, string referenceKey, string exponentKey)
    {
        var reference = Figures.Of(referenceKey);
        var exponent = Figures.Of(exponentKey);
        return new LoadPressureRule(name, reference.As<GaugePressure>(), exponent.Value, Weaker(reference.Source, exponent.Source));
    }

    private static LoadPressureRule? OfMarked(string name, GaugePressure? markedMaximum, string exponentKey) =>
        markedMaximum is { } marked && marked.Pascals > 0
            ? new LoadPressureRule(name, marked, Figures.Of(exponentKey).Value, Figures.Of(exponentKey).Source)
            : null;

    /// <summary>The source of a result that rests on two: both texts, and the status that promises less.</summary>
    private static Source Weaker(Source a, Source b)
    {
        var weaker = Rank(a.Status) >= Rank(b.Status) ? a.Status : b.Status;
        return new Source(a.Text == b.Text ? a.Text : $"{a.Text}; exponent: {b.Text}", weaker);

        static int Rank(SourceStatus status) => status switch
        {
            SourceStatus.Read => 0,
            SourceStatus.Calculated => 1,
            SourceStatus.SecondHand => 2,
            SourceStatus.FromMemory => 3,
        };
    }
}
