using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Visits.Tests.Files;

namespace Trundle.Visits.Tests.Operations;

/// <summary>Seeded balance files, spoiled in their text or in their values: answered, or refused with place, code and message; never an exception.</summary>
public sealed class BalanceFuzzTests
{
    [Theory]
    [InlineData("balance-solve-worked.json", "balance solve")]
    [InlineData("balance-settings-before-spin.json", "balance solve")]
    [InlineData("balance-trial-worked.json", "balance trial")]
    [InlineData("balance-machine-worked.json", "balance machine")]
    [InlineData("balance-calibrate-worked.json", "balance calibrate")]
    [InlineData("balance-why-worked.json", "balance why")]
    public void Spoiled_files_are_answered_or_refused(string sample, string name)
    {
        var operation = OperationList.All.Single(o => o.Name == name);
        var json = File.ReadAllText(sample);
        var random = new Random(sample.Length);
        var (answered, refused) = (0, 0);
        for (var i = 0; i < 2000; i++)
        {
            var text = i % 4 == 0 ? Spoiled.Text(random, json) : Spoiled.Values(random, json);
            FileNode.Parse(text, sample).Then(operation.Run).Match(
                answer =>
                {
                    answer.Body.ToJsonString().ShouldNotBeEmpty();
                    return answered++;
                },
                problem =>
                {
                    (problem.Where.Length > 0 && problem.Code.Length > 0 && problem.Message.Length > 0).ShouldBeTrue(text);
                    return refused++;
                });
        }

        answered.ShouldBeGreaterThan(20);
        refused.ShouldBeGreaterThan(500);
    }
}
