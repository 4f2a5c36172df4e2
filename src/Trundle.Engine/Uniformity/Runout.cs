using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Uniformity;

/// <summary>One reading of a dial gauge.</summary>
/// <param name="Place">Where on the part the dial stood, from the valve, clockwise as seen from the outer face.</param>
/// <param name="Value">What it showed; it grows where the surface stands out towards the dial. Its zero is anybody's choice.</param>
public sealed record DialReading(WheelAngle Place, Length Value);

/// <summary>One order of a runout.</summary>
/// <param name="Order">How many times in a turn.</param>
/// <param name="Amplitude">Zero to peak; peak-to-peak is twice that.</param>
/// <param name="HighPoint">The first high point clockwise from the valve; the others follow every 360° ÷ order.</param>
/// <param name="Phase">The place of the crest counted in the order's own turn: high point times order.</param>
/// <param name="StandardError">Standard error of the amplitude, or null where neither gauge step nor scatter tells it.</param>
/// <param name="MayBeOrder">The lowest other order that evenly spaced places cannot tell from this one, or null.</param>
public sealed record RunoutHarmonic(int Order, Length Amplitude, WheelAngle HighPoint, Angle Phase, Length? StandardError, int? MayBeOrder);

/// <summary>A higher order that these places take for the first.</summary>
/// <param name="Order">The order.</param>
/// <param name="Share">The greatest share of its amplitude that shows up as first harmonic; 1 is all of it.</param>
public sealed record TakenForFirst(int Order, double Share);

/// <summary>A reading that does not belong to the others: a rust lip, a tread block, a misread dial.</summary>
/// <param name="Index">Its place in the list, from 0.</param>
/// <param name="Reading">The reading.</param>
/// <param name="Expected">What the others say for its place.</param>
/// <param name="Studentised">Its residual over the standard error that the others give it; null where the others agree to the last digit.</param>
/// <param name="FirstHarmonicWithout">The first harmonic of the others alone.</param>
public sealed record SuspectReading(int Index, DialReading Reading, Length Expected, double? Studentised, HarmonicVector<Length> FirstHarmonicWithout);

/// <summary>What dial readings around a part tell.</summary>
public abstract record RunoutOutcome
{
    private RunoutOutcome()
    {
    }

    /// <summary>There are harmonics.</summary>
    public sealed record Found : RunoutOutcome
    {
        /// <summary>The readings as given.</summary>
        public required IReadOnlyList<DialReading> Readings { get; init; }

        /// <summary>The mean of the fit: the dial's own offset.</summary>
        public required Length Mean { get; init; }

        /// <summary>Greatest less least reading: the total indicator reading.</summary>
        public required Length PeakToPeak { get; init; }

        /// <summary>
        /// Greatest less least of the fitted harmonics around the whole turn. The readings stand at places, and the crest of a wave between two of them is not
        /// read: their peak-to-peak is a lower bound.
        /// </summary>
        public required Length PeakToPeakAround { get; init; }

        /// <summary>By order, from 1.</summary>
        public required IReadOnlyList<RunoutHarmonic> Harmonics { get; init; }

        /// <summary>The first harmonic as a vector. Of a radial runout its size is the eccentricity: a pure one shows twice that on the dial.</summary>
        public required HarmonicVector<Length> First { get; init; }

        /// <summary>Greatest less least of what the first harmonic leaves.</summary>
        public required Length PeakToPeakAfterFirst { get; init; }

        /// <summary>Root mean square of what the first harmonic leaves.</summary>
        public required Length RootMeanSquareAfterFirst { get; init; }

        /// <summary>The places stand evenly around.</summary>
        public required bool EvenlySpaced { get; init; }

        /// <summary>The greatest gap between neighbouring places.</summary>
        public required Angle GreatestGap { get; init; }

        /// <summary>Orders up to the highest that is reckoned with, of which these places take a notable share for the first.</summary>
        public required IReadOnlyList<TakenForFirst> TakenForFirst { get; init; }

        /// <summary>How much more the readings' uncertainty counts in the first harmonic than with as many places evenly around; 1 is best.</summary>
        public required double Crowding { get; init; }

        /// <summary>The one reading that does not belong to the others, or null.</summary>
        public required SuspectReading? Suspect { get; init; }

        /// <summary>The amount that is held against a limit: what the dial showed, or what the fitted harmonics reach around where that is more.</summary>
        public Length Judged => PeakToPeakAround > PeakToPeak ? PeakToPeakAround : PeakToPeak;

        /// <summary>The places tell the amount between them: they take no notable share of a higher order for the first, and do not stand crowded.</summary>
        public bool TellsBetween => TakenForFirst.Count == 0 && !IsCrowded;

        /// <summary>The places stand so close that the readings' uncertainty counts too much.</summary>
        public bool IsCrowded => Crowding > Figures.Of("uniformity.crowded").Value;
    }

    /// <summary>Fewer places than three, or than the orders asked for need.</summary>
    /// <param name="Needed">How many different places are needed.</param>
    public sealed record TooFewPlaces(int Needed) : RunoutOutcome;

    /// <summary>The places stand so close together, or so alike, that the orders asked for cannot be told apart.</summary>
    /// <param name="Orders">How many orders were asked for.</param>
    public sealed record PlacesDoNotTell(int Orders) : RunoutOutcome;

    /// <summary>Goes on with one of the three cases.</summary>
    public T Match<T>(Func<Found, T> found, Func<TooFewPlaces, T> tooFewPlaces, Func<PlacesDoNotTell, T> placesDoNotTell)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(tooFewPlaces);
        ArgumentNullException.ThrowIfNull(placesDoNotTell);
        return this switch
        {
            Found f => found(f),
            TooFewPlaces f => tooFewPlaces(f),
            PlacesDoNotTell f => placesDoNotTell(f),
            _ => throw new InvalidOperationException(),
        };
    }
}
