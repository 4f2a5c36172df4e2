using System.Text.RegularExpressions;

namespace Trundle.Rules.Tests;

/// <summary>The rooms of the house: arrows, purity, size, names.</summary>
public sealed partial class RoomsTests
{
    public static TheoryData<string, string[]> Arrows => new()
    {
        { "Trundle.Measures", [] },
        { "Trundle.Engine", ["Trundle.Measures"] },
        { "Trundle.Visits", ["Trundle.Engine"] },
        { "Trundle.Words", [] },
        { "Trundle.Store", ["Trundle.Visits"] },
        { "Trundle.Sheets", ["Trundle.Visits", "Trundle.Words"] },
        { "Trundle.Web.Client", ["Trundle.Visits", "Trundle.Words"] },
        { "Trundle.Web", ["Trundle.Sheets", "Trundle.Store", "Trundle.Web.Client"] },
        { "Trundle.Cli", ["Trundle.Web"] },
    };

    [Theory, MemberData(nameof(Arrows))]
    public void A_room_stands_on_the_rooms_that_the_plan_names(string room, string[] below) =>
        House.References(room).ShouldBe(below);

    [Fact]
    public void Measures_engine_and_visits_use_no_clock_file_network_culture_or_chance()
    {
        var impure = new[] { "DateTime.Now", "DateTime.UtcNow", "DateTime.Today", "DateTimeOffset.Now", "DateTimeOffset.UtcNow", "TimeProvider", "File.", "Directory.", "HttpClient", "Random.Shared", "new Random(", "Guid.NewGuid", "CultureInfo.CurrentCulture", "CurrentUICulture", "Environment.", "Console.", "async ", "Task.Run", "Thread." };
        var found = Pure()
            .SelectMany(f => File.ReadLines(f).Select((line, i) => (f, line, i)))
            .Where(l => !l.line.TrimStart().StartsWith("//", StringComparison.Ordinal))
            .SelectMany(l => impure.Where(word => Word(l.line, word)).Select(word => $"{House.Short(l.f)}:{l.i + 1} {word}"))
            .ToList();
        found.ShouldBeEmpty();

        static bool Word(string line, string word)
        {
            for (var at = line.IndexOf(word, StringComparison.Ordinal); at >= 0; at = line.IndexOf(word, at + 1, StringComparison.Ordinal))
            {
                if (at == 0 || !(char.IsLetterOrDigit(line[at - 1]) || line[at - 1] is '_' or '.' or '"'))
                {
                    return true;
                }
            }

            return false;
        }
    }

    [Fact]
    public void No_file_is_longer_than_one_reading_holds()
    {
        const int most = 500;
        House.Files("src", "*.cs", "*.razor", "*.js")
            .Where(f => !f.Contains("Migrations", StringComparison.Ordinal))
            .Select(f => (House.Short(f), Lines: File.ReadLines(f).Count()))
            .Where(f => f.Lines > most)
            .ShouldBeEmpty();
    }

    [Fact]
    public void No_type_has_a_name_that_says_nothing()
    {
        House.Files("src", "*.cs")
            .SelectMany(f => TypeName().Matches(File.ReadAllText(f)).Select(m => (House.Short(f), m.Groups["name"].Value)))
            .Where(t => EmptyName().IsMatch(t.Value))
            .ShouldBeEmpty();
    }

    [Fact]
    public void Nothing_in_the_project_speaks_of_the_machine_it_was_made_on()
    {
        // Written in two halves so that this file does not find itself.
        var words = new[] { "/wo" + "rk/", "regi" + "stry.npmjs", "api.nu" + "get.org", "/tmp/ba" + "sh_jobs" };
        House.Files("", "*.cs", "*.razor", "*.md", "*.json", "*.csproj", "*.props", "*.sh", "*.css", "*.js", "*.csv")
            .Where(f => !f.EndsWith("package-lock.json", StringComparison.Ordinal))
            .SelectMany(f => words.Where(w => File.ReadAllText(f).Contains(w, StringComparison.Ordinal)).Select(w => $"{House.Short(f)}: {w}"))
            .ShouldBeEmpty();
    }

    private static IEnumerable<string> Pure() =>
        new[] { "src/Trundle.Measures", "src/Trundle.Engine", "src/Trundle.Visits" }.SelectMany(r => House.Files(r, "*.cs"));

    [GeneratedRegex(@"\b(?:class|record|struct|interface|enum)\s+(?:struct\s+|class\s+)?(?<name>[A-Z]\w+)")]
    private static partial Regex TypeName();

    [GeneratedRegex(@"(?:Helpers?|Utils?|Utility|Utilities|Manager|Common|Impl|Dto|Misc)$|^(?:Helper|Util|Common|Base)|Base$")]
    private static partial Regex EmptyName();
}
