using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Engine.Wear;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Words;

namespace Trundle.Sheets;

/// <summary>Everything that a sheet may say about a visit, taken from the visit's file and the answers of the operations and nothing else.</summary>
internal sealed record SheetContent
{
    /// <summary>How the visit stands.</summary>
    public required VisitState State { get; init; }

    /// <summary>Writes quantities.</summary>
    public required SheetUnits Units { get; init; }

    /// <summary>In which texts it is written.</summary>
    public Texts Texts { get; init; } = Texts.British;

    /// <summary>The workshop's name, or null.</summary>
    public string? Workshop { get; init; }

    /// <summary>Positions in order.</summary>
    public required IReadOnlyList<SheetWheel> Wheels { get; init; }

    /// <summary>Axles from the front.</summary>
    public required IReadOnlyList<SheetAxle> Axles { get; init; }

    /// <summary>What was found when it came, gravest first.</summary>
    public required IReadOnlyList<Finding> Found { get; init; }

    /// <summary>What becomes of each part that was looked at when it came.</summary>
    public required IReadOnlyList<PartVerdict> Verdicts { get; init; }

    /// <summary>What stands as it leaves, gravest first.</summary>
    public required IReadOnlyList<Finding> Leaving { get; init; }

    /// <summary>The answer about rotation, or null.</summary>
    public System.Text.Json.Nodes.JsonObject? Rotation { get; init; }

    /// <summary>The answer about sizes that may stand in for the placard's, or null.</summary>
    public System.Text.Json.Nodes.JsonObject? StandIns { get; init; }

    /// <summary>The least depth of the chosen rules, as the findings name it.</summary>
    public Length? DepthLimit { get; init; }

    /// <summary>What was done, a line each.</summary>
    public required IReadOnlyList<string> Did { get; init; }

    /// <summary>What the customer should watch, a line each.</summary>
    public required IReadOnlyList<string> Watch { get; init; }

    /// <summary>When and at what distance it is seen again, a line each.</summary>
    public required IReadOnlyList<string> Next { get; init; }

    /// <summary>What the vehicle brought with it, a line each.</summary>
    public required IReadOnlyList<string> Came { get; init; }

    /// <summary>The same in fewer words.</summary>
    public required IReadOnlyList<string> CameShort { get; init; }

    /// <summary>The photographs that the workshop keeps.</summary>
    public required IReadOnlyDictionary<Guid, byte[]> Photos { get; init; }

    /// <summary>Every entry, oldest first.</summary>
    public required IReadOnlyList<Entry> Entries { get; init; }

    /// <summary>True where the check of this visit answers 'no'.</summary>
    public bool No { get; init; }

    /// <summary>How each tread was worn when it came.</summary>
    public IReadOnlyList<TyreWear> Wear => field ??= WearReading.Of(State.Arrived);

    /// <summary>The vehicle.</summary>
    public Vehicle Vehicle => State.Arrived.Vehicle;

    /// <summary>What the vehicle is called.</summary>
    public string Name => Vehicle.Name ?? "Vehicle without a name";

    /// <summary>The visit's date as written, or a dash.</summary>
    public string Date => State.Arrived.Date?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) ?? "–";

    /// <summary>The placard's tyres and pressures in one line.</summary>
    public string Placard
    {
        get
        {
            var axles = Vehicle.Axles.Select(a => a.Placard is { } p
                ? string.Join(" · ", new[] { p.Size?.Typed, p.Cold is { } cold ? Units.ShortPressure(cold) : null }.OfType<string>())
                : "").Where(t => t.Length > 0).Distinct(StringComparer.Ordinal).ToList();
            return axles.Count == 0 ? "not given" : string.Join(" / ", axles);
        }
    }

    /// <summary>A position in words with a capital.</summary>
    public string At(string? position) =>
        position is null ? "Whole vehicle" : Position.Read(position) is { IsRead: true } p ? Capital(Vehicle.InWords(p.Value)) : Capital(position);

    /// <summary>What a finding is about, what was measured and its limit, in the reader's units.</summary>
    public string Fact(Finding finding)
    {
        var measured = Said(finding, FindingWords.Of(finding));
        return finding.Limit is null ? measured : $"{measured} ({FindingWords.BeforeLimit(finding)} {Limit(finding)})";
    }

    /// <summary>A finding's limit in the reader's units; an inch beside what was measured in millimetres is given in millimetres too.</summary>
    public string Limit(Finding finding)
    {
        var amount = finding.Limit!.Amount;
        return Units.Habits.Depth == "mm" && amount is { Unit: "in", Value: { } inches } && finding.Measured.Text.Contains(" mm", StringComparison.Ordinal)
            ? $"{Length.FromInches(inches).Text("mm", 1)}, {amount.Text}"
            : Said(finding, amount.Text);
    }

    /// <summary>Positions in words, the first with a capital: "Front left, front right".</summary>
    public string Places(IEnumerable<string?> positions) => Capital(string.Join(", ", positions.Select(p => At(p)).Select(w => string.Concat(w[..1].ToLowerInvariant(), w.AsSpan(1)))));

    /// <summary>An amount of a finding in the reader's units.</summary>
    public string Said(Finding finding, string amount) => Said(finding, amount, Units);

    /// <summary>An amount of a finding in units.</summary>
    public static string Said(Finding finding, string amount, SheetUnits units) =>
        finding.Rule.StartsWith("tread.", StringComparison.Ordinal) || finding.Rule.StartsWith("wear.", StringComparison.Ordinal) || finding.Rule.StartsWith("winter.tread", StringComparison.Ordinal)
            ? units.InTreadText(amount)
            : finding.Rule.StartsWith("damage.", StringComparison.Ordinal) || finding.Rule.StartsWith("wheel.bent", StringComparison.Ordinal) ? units.InDamageText(amount)
            : units.InText(amount);

    /// <summary>What stops hand-back: a finding in the reader's units, else as it stands.</summary>
    public string WhatStops(Stop stop) =>
        Leaving.FirstOrDefault(f => f.Position == stop.Position && FindingWords.Of(f) == stop.What) is { } finding ? Said(finding, stop.What) : stop.What;

    /// <summary>Words with their wheel in front, unless they begin with it already.</summary>
    public string Placed(string? position, string words) =>
        position is null || words.StartsWith(At(position), StringComparison.OrdinalIgnoreCase) ? words : $"{At(position)}: {words}";

    /// <summary>A text with a capital.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : string.Concat(text[..1].ToUpperInvariant(), text.AsSpan(1));
}
