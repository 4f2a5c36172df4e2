using Trundle.Visits.Files;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Operations;

/// <summary>The drawing that belongs to the answer of <c>leak</c>: pressure over time, with the line, its band and the warning.</summary>
public static class LeakDrawing
{
    /// <summary>The drawing of a file; none where the file cannot be answered.</summary>
    /// <param name="body">The file.</param>
    /// <param name="unit">The reader's unit of pressure: <c>kPa</c>, <c>psi</c> or <c>bar</c>.</param>
    public static IReadOnlyList<Drawing> Of(FileNode body, string unit)
    {
        ArgumentNullException.ThrowIfNull(body);
        return LeakFileReader.Read(body, []) is { } file && LeakStudy.Of(file) is { IsRead: true } study
            ? [new Drawing("loss", () => LossOverTime.Draw("loss", new LossView("Pressure over time", study.Value.Loss, study.Value.Warning?.Pressure, study.Value.Until, study.Value.Warning is null ? null : file.Expected, unit)))]
            : [];
    }
}
