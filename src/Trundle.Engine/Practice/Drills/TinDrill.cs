using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;

namespace Trundle.Engine.Practice.Drills;

/// <summary>A TIN of an invented plant; week, year and age are what the engine's reader says.</summary>
internal static class TinDrill
{
    public static Drill Of(ulong seed, DateOnly today)
    {
        var stream = SeedStream.Of(seed, "tin");
        var week = stream.Between(1, 52);
        var year = today.Year - stream.Between(1, 12);
        var text = $"DOT {Symbols(3)} {Symbols(6)} {week.ToString("00", CultureInfo.InvariantCulture)}{(year % 100).ToString("00", CultureInfo.InvariantCulture)}";
        var tin = TinReader.Read(text, today).Value;
        var source = new Source("49 CFR 574.5 (second-hand)", SourceStatus.SecondHand);
        var age = tin.AgeOn(today)!.Years!.Value;
        return new Drill(DrillKind.Tin, seed, DrillList.Title(DrillKind.Tin), [new("TIN", text), new("today", today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))],
        [
            Asking.Number(new("week", "The week in which it was made.", 30, true), tin.Week!.Value, 0, 0, source, "The first two of the last four digits are the week."),
            Asking.Number(new("year", "The year in which it was made, four digits.", 30, true), tin.Year!.Value, 0, 0, source, "The last two digits are the year."),
            Asking.Number(new("age", "Its age in years, to half a year.", 40, false), age, 1, 0.5, source, "From that week to today."),
        ]);

        string Symbols(int count) => string.Concat(Enumerable.Range(0, count).Select(_ => TinReader.Alphabet[stream.Between(0, TinReader.Alphabet.Length - 1)]));
    }
}
