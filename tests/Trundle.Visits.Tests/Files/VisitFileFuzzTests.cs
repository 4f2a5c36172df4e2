using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Files;

/// <summary>Twenty thousand seeded visit files, spoiled in their text or in their values: read, or problems with place, code and message; never an exception, never a hang.</summary>
public sealed class VisitFileFuzzTests
{
    private const int Inputs = 20_000;

    private static readonly TimeSpan Most = TimeSpan.FromMinutes(10);

    [Fact]
    public void The_file_that_is_spoiled_is_sound()
    {
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(FileNode.Parse(InventedVisit.Json, "visit.json").Value, problems);
        problems.ShouldBeEmpty();
        file.Subject.Fitted.Count.ShouldBe(5);
    }

    [Fact]
    public async Task Spoiled_files_are_read_or_refused()
    {
        var (read, refused) = await Task.Run(Fuzz).WaitAsync(Most);
        read.ShouldBeGreaterThan(Inputs / 100, "some files should stay readable, or the fuzz reaches nothing behind the first syntax error");
        refused.ShouldBeGreaterThan(Inputs / 4);
    }

    private static (int Read, int Refused) Fuzz()
    {
        var random = new Random(52_4);
        var read = 0;
        for (var i = 0; i < Inputs; i++)
        {
            var json = i % 4 == 0 ? Spoiled.Text(random, InventedVisit.Json) : Spoiled.Values(random, InventedVisit.Json);
            try
            {
                read += Check(json) ? 1 : 0;
            }
            catch (Exception e) when (e is not ShouldAssertException)
            {
                throw new InvalidOperationException($"Input {i} threw:\n{json}", e);
            }
        }

        return (read, Inputs - read);
    }

    private static bool Check(string json)
    {
        var root = FileNode.Parse(json, "visit.json");
        if (!root.IsRead)
        {
            Sound(root.Problem!, json);
            root.Problem!.Where.ShouldNotBeEmpty(json);
            return false;
        }

        var problems = new List<Problem>();
        VisitFileReader.Read(root.Value, problems);
        foreach (var problem in problems)
        {
            Sound(problem, json);
        }

        return problems.Count == 0;
    }

    /// <summary>Plain conditions first: an assertion's text is costly, and there are some hundred thousand problems.</summary>
    private static void Sound(Problem problem, string json)
    {
        var sound = problem.Where.Length > 0 && !string.IsNullOrWhiteSpace(problem.Code)
            && (problem.Message.EndsWith('.') || problem.Message.EndsWith('?')) && problem.Message.Length < 900;
        if (!sound)
        {
            sound.ShouldBeTrue($"{problem.Code} at '{problem.Where}': {problem.Message}\n{json}");
        }
    }
}
