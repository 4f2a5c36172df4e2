using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>The three settings of a balancer, as read off.</summary>
/// <param name="RimDistance">What the distance scale shows at the inner flange.</param>
/// <param name="RimDiameter">Rim diameter.</param>
/// <param name="RimWidth">Rim width.</param>
public sealed record BalancerSettings(Length RimDistance, Length RimDiameter, Length RimWidth);

/// <summary>How far a weight place lies from its flange.</summary>
/// <param name="Radial">From half the rim diameter, outwards positive: a strip inside the rim is negative.</param>
/// <param name="Axial">From the flange of its side, positive towards the outer side.</param>
public sealed record WeightPlaceOffset(Length Radial, Length Axial);

/// <summary>What turns one balancer's settings into planes, and what its display hides.</summary>
public sealed record BalancerProfile
{
    /// <summary>Where the distance scale's zero lies along the shaft.</summary>
    public Length DistanceZero { get; init; }

    /// <summary>The inner clip's place; at the flange where nobody gave it.</summary>
    public WeightPlaceOffset? InnerClip { get; init; }

    /// <summary>The outer clip's place; at the flange where nobody gave it.</summary>
    public WeightPlaceOffset? OuterClip { get; init; }

    /// <summary>The inner adhesive weight's place, or null where nobody gave it.</summary>
    public WeightPlaceOffset? InnerAdhesive { get; init; }

    /// <summary>The outer adhesive weight's place, or null where nobody gave it.</summary>
    public WeightPlaceOffset? OuterAdhesive { get; init; }

    /// <summary>The step that shown masses are rounded to, or null where not known.</summary>
    public Mass? DisplayStep { get; init; }

    /// <summary>Smaller masses are shown as nothing; null where not known.</summary>
    public Mass? DisplayHidesBelow { get; init; }

    /// <summary>The step that shown angles are rounded to, under half a turn, or null where not known.</summary>
    public Angle? DisplayAngleStep { get; init; }

    /// <summary>The workshop's own name of the balancer, or null.</summary>
    public string? Instrument { get; init; }

    /// <summary>It is known by how much the display may be off.</summary>
    public bool TellsDisplay => DisplayStep is { Si: > 0 } || DisplayHidesBelow is { Si: > 0 } || DisplayAngleStep is { Si: > 0 };

    /// <summary>
    /// The most that may be there while nothing is shown: the hidden mass, or half a step. Nobody says whether a display rounds before it hides; where
    /// the hidden mass is no whole number of steps, the step just under it is hidden too, with what is rounded to it.
    /// </summary>
    public Mass MostShownAsNothing
    {
        get
        {
            var (hiddenGrams, stepGrams) = ((DisplayHidesBelow ?? default).Grams, (DisplayStep ?? default).Grams);
            var hiddenSteps = stepGrams > 0 ? Math.Max(0, Math.Ceiling((hiddenGrams / stepGrams) - 1e-9) - 1) : 0;
            return Mass.FromGrams(Math.Max(hiddenGrams, (hiddenSteps + 0.5) * stepGrams));
        }
    }

    /// <summary>The place of a weight by settings; null where it is an adhesive one whose place nobody gave.</summary>
    public PlanePlace? PlaceOf(BalancerSettings settings, PlaneSide side, WeightKind kind)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var offset = (side, kind) switch
        {
            (PlaneSide.Inner, WeightKind.Clip) => InnerClip ?? AtFlange,
            (PlaneSide.Outer, WeightKind.Clip) => OuterClip ?? AtFlange,
            (PlaneSide.Inner, WeightKind.Adhesive) => InnerAdhesive,
            (PlaneSide.Outer, WeightKind.Adhesive) => OuterAdhesive,
            _ => throw new ArgumentOutOfRangeException(nameof(side)),
        };
        var flange = DistanceZero + settings.RimDistance + (side == PlaneSide.Outer ? settings.RimWidth : default);
        return offset is null ? null : new PlanePlace((settings.RimDiameter / 2) + offset.Radial, flange + offset.Axial);
    }

    private static WeightPlaceOffset AtFlange { get; } = new(default, default);
}

/// <summary>A rim's sizes by one authority.</summary>
/// <param name="By">Whose word it is, for a person: "the rim's stamp".</param>
/// <param name="Diameter">Diameter, or null where it does not tell.</param>
/// <param name="Width">Width, or null where it does not tell.</param>
/// <param name="Range">The widths between which it must lie, by a table's row, or null where it does not tell or no row is held.</param>
public sealed record KnownRim(string By, Length? Diameter, Length? Width, RimRange? Range = null)
{
    /// <summary>What a stamp tells.</summary>
    /// <source>ISO 4000-2 rim designation (from memory)</source>
    public static KnownRim Of(RimStamp stamp)
    {
        ArgumentNullException.ThrowIfNull(stamp);
        return new KnownRim("the rim's stamp", Of(stamp.DiameterInches, stamp.DiameterMillimetres), stamp.Width);
    }

    /// <summary>What a tyre's marking tells: the diameter of the rim it is made for, and by the table of rims the widths that are approved for it.</summary>
    /// <source>UN R30 2.x (from memory); the table of rim widths, each row with its own source</source>
    public static KnownRim Of(Marking marking)
    {
        ArgumentNullException.ThrowIfNull(marking);
        return new KnownRim("the tyre's marking", Of(marking.Size.RimDiameterInches, marking.Size.RimDiameterMillimetres), null, RimRanges.For(marking.Size));
    }

    private static Length? Of(double? inches, double? millimetres) =>
        inches is { } i ? Length.FromInches(i) : millimetres is { } mm ? Length.FromMillimetres(mm) : null;
}

/// <summary>Whether the settings entered can be those of this wheel: asked before the spin.</summary>
public static class SettingsCheck
{
    /// <summary>Holds a diameter and a width against what is known of the rim.</summary>
    /// <param name="entered">Whose they are, in words for a person: "the balancer's setting".</param>
    /// <param name="diameter">Rim diameter, or null.</param>
    /// <param name="width">Rim width, or null.</param>
    /// <param name="known">The stamp, the marking, what was entered for the wheel.</param>
    /// <returns>One finding for each contradiction; none where nothing is known to hold them against.</returns>
    /// <source>common practice: rim diameters and widths come in steps of half an inch, so that a difference of more than half a step is another rim</source>
    public static IReadOnlyList<Finding> Findings(string entered, Length? diameter, Length? width, IEnumerable<KnownRim> known)
    {
        ArgumentNullException.ThrowIfNull(entered);
        ArgumentNullException.ThrowIfNull(known);
        return
        [
            .. known.SelectMany(k => new[]
            {
                Held("balance.rim-diameter", $"{entered}: the rim diameter", diameter, k.Diameter, k.By),
                Held("balance.rim-width", $"{entered}: the rim width", width, k.Width, k.By),
                Ranged($"{entered}: the rim width", width, k),
            }).OfType<Finding>(),
        ];
    }

    private static Finding? Ranged(string what, Length? width, KnownRim known)
    {
        if (width is not { } w || known.Range is not { } range || range.BoundPassedBy(w, Figures.Of("balance.settingsSlack").As<Length>()) is not { } bound)
        {
            return null;
        }

        return new Finding(
            "balance.rim-width", Category.Refer, null,
            Amount.Of(w, "in", 2),
            new Limit(new Amount(bound.Inches, "in", range.Text), range.Source),
            range.Source,
            $"{what} is {w.Text("in", 2)}, but by {known.By} the rims approved are {range.Text}. Read the rim's stamp and put the setting right before the spin; whether such a rim may carry this tyre, its maker says.")
        {
            Cautions = range.Cautions,
        };
    }

    private static Finding? Held(string rule, string what, Length? value, Length? known, string by)
    {
        var slack = Figures.Of("balance.settingsSlack");
        return value is { } v && known is { } k && Math.Abs((v - k).Si) > slack.As<Length>().Si
            ? new Finding(
                rule, Category.Refer, null,
                Amount.Of(v, "in", 2),
                new Limit(Amount.Of(k, "in", 2), Source.Entered(by)),
                slack.Source,
                $"{what} is {v.Text("in", 2)}, but {by} says {k.Text("in", 2)}. Read both again and put the wrong one right before the spin.")
            : null;
    }
}
