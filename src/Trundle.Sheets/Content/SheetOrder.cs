using Trundle.Engine.Findings;
using Trundle.Visits.Bay;
using Trundle.Words;

namespace Trundle.Sheets;

/// <summary>Which sheet is wanted.</summary>
/// <param name="Reader">For whom.</param>
/// <param name="Paper">On what paper.</param>
public sealed record SheetOrder(SheetReader Reader, PaperSize Paper)
{
    /// <summary>The units that come first; null takes those of the place whose rules the visit names.</summary>
    public UnitHabits? Units { get; init; }

    /// <summary>Every entry of the visit where they are kept, superseded ones too, for the file's sheet; empty where only a file is held.</summary>
    public IReadOnlyList<Entry> Entries { get; init; } = [];

    /// <summary>Findings that the file cannot tell: TINs that stand in the workshop's register of condemned tyres and are not decided.</summary>
    public IReadOnlyList<Finding> Known { get; init; } = [];

    /// <summary>The photographs that the workshop keeps of the visit, as JPEG or PNG; empty where only a file is held.</summary>
    public IReadOnlyDictionary<Guid, byte[]> Photos { get; init; } = new Dictionary<Guid, byte[]>();

    /// <summary>In which texts and which form of dates it is written.</summary>
    public Texts Texts { get; init; } = Texts.British;

    /// <summary>The workshop's name, or null.</summary>
    public string? Workshop { get; init; }
}
