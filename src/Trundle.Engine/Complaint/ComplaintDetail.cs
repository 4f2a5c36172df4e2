using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Complaint;

/// <summary>What the driver says of a complaint, question by question. What nobody asked is not there.</summary>
/// <param name="Given">Of each question that was answered, the answer's word.</param>
/// <param name="At">The speed at which it is worst, or null.</param>
public sealed record ComplaintDetail(IReadOnlyDictionary<string, string> Given, Speed? At)
{
    private const string SpeedQuestion = "speed";

    /// <summary>Of each question, the answers that what was said leaves open: one where it was answered, and by the speed where that alone was told.</summary>
    internal IReadOnlyDictionary<string, IReadOnlyList<string>> Open()
    {
        var open = Given.ToDictionary(g => g.Key, g => (IReadOnlyList<string>)[g.Value], StringComparer.Ordinal);
        if (At is { } speed && !open.ContainsKey(SpeedQuestion))
        {
            open[SpeedQuestion] = speed <= Figures.Of("complaint.low-speed").As<Speed>() ? ["low"]
                : speed <= Figures.Of("complaint.middle-speed").As<Speed>() ? ["middle"]
                : ["band", "rising"];
        }

        return open;
    }
}
