using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Fleet;

/// <summary>A vehicle of a fleet as its list gives it.</summary>
/// <param name="Unit">The fleet's own number of the vehicle, by which it is found.</param>
/// <param name="Fields">What is known of it, as fields of a visit: <c>vehicle.axles.0.placard.size</c>.</param>
public sealed record FleetVehicle(string Unit, IReadOnlyList<(string Field, string Typed)> Fields)
{
    /// <summary>What the workshop calls it.</summary>
    public string Name => Fields.FirstOrDefault(f => f.Field == "vehicle.name").Typed ?? Unit;
}

/// <summary>A line of a fleet's list as a table gives it.</summary>
/// <param name="Line">Its number in the file, from 1.</param>
/// <param name="Cells">Its cells.</param>
public sealed record FleetLine(int Line, IReadOnlyList<string> Cells);

/// <summary>
/// Reads a fleet's list strictly: every line by the reader that reads a visit's file, so that what comes in is what a visit takes. A list with one wrong
/// line is taken not at all.
/// </summary>
public static class FleetList
{
    /// <summary>The most vehicles of one list.</summary>
    public const int Most = 5000;

    /// <summary>The most characters of a fleet's number.</summary>
    public const int MostUnit = 40;

    /// <summary>The column of the fleet's own number.</summary>
    public const string UnitColumn = "unit";

    /// <summary>The columns with a name of their own, and the field that each goes into. Any other field of the vehicle is a column by its path.</summary>
    public static IReadOnlyList<(string Column, string Field)> Columns { get; } =
    [
        ("vehicle", "vehicle.name"), ("vin", "vehicle.vin"), ("class", "vehicle.class"), ("drive", "vehicle.drive"), ("rules", "rules"),
        .. Enumerable.Range(0, 2).SelectMany(axle => Axle(axle == 0 ? "front" : "rear", string.Create(CultureInfo.InvariantCulture, $"vehicle.axles.{axle}"))),
    ];

    /// <summary>Reads the lines of a list.</summary>
    /// <param name="header">The names of the columns.</param>
    /// <param name="lines">The lines under it.</param>
    /// <param name="problems">Gathers every problem; its place is the line and the column.</param>
    public static IReadOnlyList<FleetVehicle> Read(FleetLine header, IReadOnlyList<FleetLine> lines, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(problems);
        var before = problems.Count;
        var fields = Fields(header, problems);
        if (problems.Count > before)
        {
            return [];
        }

        if (lines.Count is 0 or > Most)
        {
            problems.Add(new Problem(At(header.Line, null), lines.Count == 0 ? "no-lines" : "too-many-lines", lines.Count == 0 ? "There is no vehicle under the names of the columns." : string.Create(CultureInfo.InvariantCulture, $"There are {lines.Count} vehicles; a list has at most {Most}: divide it.")));
            return [];
        }

        var vehicles = new List<FleetVehicle>();
        var seen = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var line in lines)
        {
            if (Read(line, header, fields, problems) is not { } vehicle)
            {
                continue;
            }

            if (!seen.TryAdd(vehicle.Unit, line.Line))
            {
                problems.Add(new Problem(At(line.Line, UnitColumn), "unit-twice", string.Create(CultureInfo.InvariantCulture, $"'{NumberText.Shown(vehicle.Unit)}' stands in line {seen[vehicle.Unit]} already; each vehicle has a number of its own.")));
            }

            vehicles.Add(vehicle);
        }

        return problems.Count > before ? [] : vehicles;
    }

    /// <summary>The field of each column; null for the fleet's number.</summary>
    private static List<string?> Fields(FleetLine header, List<Problem> problems)
    {
        var fields = new List<string?>();
        foreach (var cell in header.Cells)
        {
            var name = cell.Trim();
            var field = string.Equals(name, UnitColumn, StringComparison.OrdinalIgnoreCase) ? null
                : Columns.FirstOrDefault(c => string.Equals(c.Column, name, StringComparison.OrdinalIgnoreCase)).Field
                ?? (name.StartsWith("vehicle.", StringComparison.Ordinal) && Entry.IsField(name) ? name : "");
            if (field is "")
            {
                var nearest = FileObject.Nearest(name, [UnitColumn, .. Columns.Select(c => c.Column)]);
                problems.Add(new Problem(At(header.Line, null), "column-unknown", $"'{NumberText.Shown(name)}' is no column here{(nearest is null ? "" : $"; did you mean '{nearest}'?")}; known: {ChoiceText.Of([UnitColumn, .. Columns.Select(c => c.Column)], "and")}, or a field of the vehicle such as vehicle.axles.2.placard.size."));
            }
            else if (fields.Contains(field))
            {
                problems.Add(new Problem(At(header.Line, null), "column-twice", $"The column '{NumberText.Shown(name)}' stands twice."));
            }

            fields.Add(field);
        }

        if (problems.Count == 0 && !fields.Contains(null))
        {
            problems.Add(new Problem(At(header.Line, null), "missing", $"The column '{UnitColumn}' is missing: the fleet's own number of each vehicle."));
        }

        return fields;
    }

    private static FleetVehicle? Read(FleetLine line, FleetLine header, List<string?> fields, List<Problem> problems)
    {
        if (line.Cells.Count != fields.Count)
        {
            problems.Add(new Problem(At(line.Line, null), "cells-count", string.Create(CultureInfo.InvariantCulture, $"There are {line.Cells.Count} cells under {fields.Count} columns; put a text that has a comma in it into quotes.")));
            return null;
        }

        var unit = line.Cells[fields.IndexOf(null)].Trim();
        if (unit.Length is 0 or > MostUnit || unit.Any(char.IsControl))
        {
            problems.Add(new Problem(At(line.Line, UnitColumn), unit.Length == 0 ? "missing" : "unit-unreadable", unit.Length == 0 ? "The fleet's number of this vehicle is missing." : string.Create(CultureInfo.InvariantCulture, $"A fleet's number has at most {MostUnit} characters, in one line.")));
            return null;
        }

        List<(string Field, string Typed)> typed = [.. fields.Select((field, i) => (field!, line.Cells[i].Trim())).Where(f => f.Item1 is not null && f.Item2.Length > 0)];
        if (!typed.Exists(f => f.Field == "vehicle.name"))
        {
            // On the board a vehicle is found by what it is called.
            typed.Insert(0, ("vehicle.name", unit));
        }

        typed.AddRange(Told(typed));
        var assembled = VisitFields.Of(typed.Select((f, i) => new Entry(new Guid(i + 1, 0, 0, new byte[8]), f.Field, f.Typed, "", Role.Desk, default))).Assemble();
        var found = new List<Problem>();
        VisitFileReader.Read(assembled.Root, found);
        foreach (var problem in found)
        {
            var field = assembled.FieldOf(problem.Where);
            var column = fields.FindIndex(f => f is not null && (field == f || field.StartsWith(f + ".", StringComparison.Ordinal) || f.StartsWith(field + ".", StringComparison.Ordinal)));
            problems.Add(new Problem(At(line.Line, column < 0 ? field : header.Cells[column].Trim()), problem.Code, problem.Message));
        }

        foreach (var (field, text) in typed.Where(f => f.Typed.Length > Entry.MostCharacters))
        {
            problems.Add(new Problem(At(line.Line, field), "too-long", string.Create(CultureInfo.InvariantCulture, $"There are {text.Length} characters; at most {Entry.MostCharacters} are kept.")));
        }

        return found.Count > 0 ? null : new FleetVehicle(unit, typed);
    }

    /// <summary>The front axle of a vehicle steers, and the drive tells which of two axles is driven, where the list does not say otherwise.</summary>
    private static List<(string, string)> Told(List<(string Field, string Typed)> typed)
    {
        var told = new List<(string, string)>();
        var drive = typed.FirstOrDefault(f => f.Field == "vehicle.drive").Typed?.ToUpperInvariant();
        for (var i = 0; i < 2; i++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"vehicle.axles.{i}");
            if (!typed.Exists(f => f.Field.StartsWith(at + ".", StringComparison.Ordinal)))
            {
                continue;
            }

            if (i == 0 && !typed.Exists(f => f.Field == $"{at}.steered"))
            {
                told.Add(($"{at}.steered", "true"));
            }

            if (drive is "FRONT" or "REAR" or "ALL" && !typed.Exists(f => f.Field == $"{at}.driven"))
            {
                told.Add(($"{at}.driven", drive == "ALL" || drive == "FRONT" == (i == 0) ? "true" : "false"));
            }
        }

        return told;
    }

    private static (string, string)[] Axle(string word, string at) =>
    [
        ($"{word} tyre", $"{at}.placard.size"), ($"{word} pressure", $"{at}.placard.cold"), ($"{word} laden pressure", $"{at}.placard.laden"),
        ($"{word} fixings", $"{at}.fixings.count"), ($"{word} torque", $"{at}.fixings.torque"), ($"{word} thread", $"{at}.fixings.thread"),
    ];

    private static string At(int line, string? column) => string.Create(CultureInfo.InvariantCulture, $"line {line}{(column is null ? "" : $", {column}")}");
}
