using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>Reads sidewall markings: size, service description, words.</summary>
public static class MarkingReader
{
    /// <summary>
    /// Reads a marking such as <c>205/55 R16 91V</c> in any case and spacing.
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <returns>
    /// The marking, or one problem that names the part and its character. What the marking does not tell is null; what contradicts itself or only
    /// the maker can say is a caution of the marking.
    /// </returns>
    /// <source>92/23/EEC Annex II section 2 (read); UN R30, R54 and R75 sections 2 and 3 (from memory); vehicle handbooks' size charts (read)</source>
    public static Reading<Marking> Read(string? text)
    {
        var typed = text ?? "";
        if (string.IsNullOrWhiteSpace(typed))
        {
            return Reading<Marking>.Failed("empty", "Nothing was entered where a marking is expected, for example 205/55 R16 91V.");
        }

        if (typed.Length > SpelledText.Longest)
        {
            return Reading<Marking>.Failed("marking-too-long", $"'{NumberText.Shown(typed)}' is longer than a marking; write the size and service description only, for example 205/55 R16 91V.");
        }

        var spelled = SpelledText.Of(typed);
        if (SizeForms.Find(spelled.Text) is not { } size)
        {
            return Reading<Marking>.Failed(MarkingProblem.NoForm(spelled));
        }

        if ((MarkingProblem.DashForSlash(size, spelled) ?? SizeRange.Check(size, spelled)) is { } problem)
        {
            return Reading<Marking>.Failed(problem);
        }

        return ServiceScan.Read(spelled, size).Then(scan =>
        {
            var designation = Dimensions.Of(SizeReader.Read(size, scan));
            var service = ServiceReader.First(designation, scan);
            var additional = ServiceReader.Second(designation, scan);
            return Reading<Marking>.Of(new Marking
            {
                Typed = typed.Trim(),
                // RF in the size says it; so does the word behind it.
                Size = designation with { RunFlat = designation.RunFlat || scan.Words.Any(w => w is "RUN FLAT" or "RUNFLAT" or "RUN-FLAT") },
                Service = service,
                AdditionalService = additional,
                Words = scan.Words,
                Cautions = [.. MarkingCautions.Of(designation, service, additional, scan)],
            });
        });
    }

    /// <summary>One spelling of a size that stands in a table of the engine; throws where it is none, since that is a mistake in the table.</summary>
    internal static string SizeText(string size)
    {
        var spelled = SpelledText.Of(size);
        var match = SizeForms.Find(spelled.Text) ?? throw new InvalidOperationException($"'{size}' in a table is not a size.");
        return SizeReader.Read(match, ServiceScan.Read(spelled, match).Value).Text;
    }
}
