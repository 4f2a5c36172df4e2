using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>The pressure that is never passed while the beads are being seated.</summary>
public abstract record SeatingCeiling
{
    private SeatingCeiling(IReadOnlyList<ConsideredLimit> considered, IReadOnlyList<string> cautions) =>
        (Considered, Cautions) = (considered, cautions);

    /// <summary>Every limit that was looked at; exactly one ruled.</summary>
    public IReadOnlyList<ConsideredLimit> Considered { get; }

    /// <summary>What stands beside the number wherever it is shown.</summary>
    public IReadOnlyList<string> Cautions { get; }

    /// <summary>The lowest of the known limits.</summary>
    public SourcedPressure Ruling
    {
        get
        {
            var ruling = Considered.Single(l => l.Ruled);
            return new SourcedPressure(ruling.Pressure!.Value, ruling.Source);
        }
    }

    /// <summary>The tyre's or the wheel's maker gave a mounting limit, and it was among those held against each other.</summary>
    public sealed record MakerValueGiven : SeatingCeiling
    {
        internal MakerValueGiven(IReadOnlyList<ConsideredLimit> considered, IReadOnlyList<string> cautions) : base(considered, cautions)
        {
        }
    }

    /// <summary>Neither maker's mounting limit was given: the ceiling is published guidance or a lower marking, and the makers are to be asked.</summary>
    public sealed record MakerValueNotGiven : SeatingCeiling
    {
        internal MakerValueNotGiven(IReadOnlyList<ConsideredLimit> considered, IReadOnlyList<string> cautions) : base(considered, cautions)
        {
        }
    }

    /// <summary>Goes on with one of the two cases.</summary>
    public T Match<T>(Func<MakerValueGiven, T> given, Func<MakerValueNotGiven, T> notGiven)
    {
        ArgumentNullException.ThrowIfNull(given);
        ArgumentNullException.ThrowIfNull(notGiven);
        return this is MakerValueGiven g ? given(g) : notGiven((MakerValueNotGiven)this);
    }

    /// <summary>
    /// The ceiling for seating the beads of one tyre on one wheel: the lowest of the tyre maker's limit, the wheel maker's limit, the
    /// wheel's greatest pressure, the tyre's marked maximum and the published guidance.
    /// </summary>
    /// <param name="tyre">The tyre, or null where nothing is known of it.</param>
    /// <param name="wheel">The wheel, or null.</param>
    /// <returns>One of the two cases; the guidance is always known, so there is always a number.</returns>
    /// <source>US trade guidance 40 psi and wdk Leitlinie 104 3.3 bar (second-hand), 300 kPa common practice; the lowest known limit holds</source>
    public static SeatingCeiling For(FittedTyre? tyre, Wheel? wheel)
    {
        var limits = new List<ConsideredLimit>
        {
            new("tyre maker's mounting limit", LimitBound.Most, tyre?.SeatingLimit, Source.Entered("tyre maker's mounting limit, as entered")),
            new("wheel maker's mounting limit", LimitBound.Most, wheel?.SeatingLimit, Source.Entered("wheel maker's mounting limit, as entered")),
            new("wheel's greatest pressure", LimitBound.Most, wheel?.MaximumPressure, Source.Entered("wheel's marked greatest pressure, as entered")),
            new("tyre's marked maximum", LimitBound.Most, tyre?.MaximumPressure, Source.Entered("maximum pressure on the sidewall, as entered")),
            Published("published guidance, 40 psi", "pressure.seating-guidance"),
            Published("common practice", "pressure.seating-practice"),
            Published("published guidance, bead jump", "pressure.seating-beadhop"),
        };

        var lowest = limits.Where(l => l.Pressure is not null).MinBy(l => l.Pressure!.Value.Pascals)!;
        limits = [.. limits.Select(l => ReferenceEquals(l, lowest) ? l with { Ruled = true } : l)];
        var ceiling = lowest.Pressure!.Value.Text("kPa", 0);
        var cautions = new List<string>
        {
            $"Never above {ceiling} while the beads are not both home: stop, let all air out, take the beads off their seats, lubricate again and start afresh.",
            "Stand clear of the tyre, with a clip-on chuck, a gauge and valve in the line and a hose long enough to stand outside its path.",
        };
        var makerGave = tyre?.SeatingLimit is not null || wheel?.SeatingLimit is not null;
        if (!makerGave)
        {
            cautions.Add("The makers' own mounting limits were not given: look at the sidewall and the wheel and ask; a lower figure of theirs holds.");
        }

        if (tyre?.MaximumPressure is not null)
        {
            cautions.Add("The maximum pressure on the sidewall is no permission to seat beads with it.");
        }

        if (tyre?.Marking?.Size.TyreClass == TyreClass.Truck)
        {
            cautions.Add($"Large tyre: no more than {Figures.Of("pressure.seating-beforecage").As<GaugePressure>().Text("kPa", 0)} before it is in a cage or behind a barrier (29 CFR 1910.177 asks for a restraining device).");
        }

        return makerGave ? new MakerValueGiven(limits, cautions) : new MakerValueNotGiven(limits, cautions);
    }

    private static ConsideredLimit Published(string name, string key)
    {
        var figure = Figures.Of(key);
        return new ConsideredLimit(name, LimitBound.Most, figure.As<GaugePressure>(), figure.Source);
    }
}
