using Trundle.Engine.Replacement;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>What choosing a size that stands in for the placard's enters in a visit: the choice, and the new tyres that it means.</summary>
public static class StandInChoice
{
    /// <summary>The entries of a choice, or of taking one back.</summary>
    /// <param name="fields">The visit before.</param>
    /// <param name="arrived">The vehicle as it came.</param>
    /// <param name="request">What was asked; its <see cref="ReplacementRequest.Chosen"/> is the choice before this one.</param>
    /// <param name="chosen">The size that is chosen now, or null where the choice is taken back.</param>
    /// <returns>
    /// At every place that was asked for: the tyre is demounted, one of this size goes on, with the rim and the valve that go with it. What else
    /// was entered of a tyre of another size there is taken away, since it is not that tyre; a tyre of this size that is entered already stays.
    /// </returns>
    public static IReadOnlyList<(string Field, string Typed)> Entries(VisitFields fields, FittedVehicle arrived, ReplacementRequest request, ReplacementCandidate? chosen)
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(arrived);
        ArgumentNullException.ThrowIfNull(request);
        var entries = new List<(string Field, string Typed)> { ("replace.chosen", chosen?.Marking.Typed ?? "") };
        foreach (var place in ReplacementPlaces.On(arrived, request.Axles))
        {
            var at = $"work.renewed.{place}";
            if (request.Chosen is { } before && !ReferenceEquals(before, chosen))
            {
                entries.AddRange(Own(arrived, place, before).Where(e => Same(fields[e.Field], e.Typed)).Select(e => (e.Field, "")));
            }

            if (chosen is null)
            {
                continue;
            }

            if (!Same(fields[$"{at}.tyre.marking"], chosen.Marking.Typed))
            {
                entries.AddRange(new[] { "tyre", "tread" }.SelectMany(part => fields.Under($"{at}.{part}")).Select(e => (e.Field, "")));
            }

            entries.Add(($"work.jobs.{place}", WheelJob.Demount.Word()));
            entries.AddRange(Own(arrived, place, chosen));
        }

        // A field that is taken away and entered anew is entered once.
        return [.. entries.GroupBy(e => e.Field, StringComparer.Ordinal).Select(same => same.Last())];
    }

    /// <summary>What a choice enters of the parts at one place.</summary>
    private static IEnumerable<(string Field, string Typed)> Own(FittedVehicle arrived, Position place, ReplacementCandidate size)
    {
        var at = $"work.renewed.{place}";
        yield return ($"{at}.tyre.marking", size.Marking.Typed);
        for (var i = 0; i < size.Marks.Count; i++)
        {
            yield return (FormattableString.Invariant($"{at}.tyre.marks.{i}"), size.Marks[i]);
        }

        if (size.Rim is { } rim && arrived.At(place)?.Wheel?.Rim != rim)
        {
            yield return ($"{at}.wheel.rim", rim.DiameterMillimetres is { } metric ? FormattableString.Invariant($"{rim.Width.Millimetres:0} {(rim.Flange.Length == 0 ? "x" : rim.Flange)} {metric:0}") : rim.Text);
        }

        if (RenewedParts.ValveAt(arrived, place) is { } valve)
        {
            yield return ($"{at}.valve.kind", InspectionFileReader.ValveWords.First(w => w.Value == valve).Word);
        }
    }

    private static bool Same(string? typed, string other) => typed is not null && string.Equals(Bare(typed), Bare(other), StringComparison.OrdinalIgnoreCase);

    private static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
