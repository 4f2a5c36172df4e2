using System.Reflection;
using System.Xml.Linq;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Rules.Tests;

/// <summary>What every public function of the engine owes its reader.</summary>
public sealed class EngineTests
{
    private static readonly Assembly Engine = typeof(Finding).Assembly;

    [Fact]
    public void Every_public_function_of_the_engine_names_its_source()
    {
        var doc = XDocument.Load(Path.Combine(AppContext.BaseDirectory, "Trundle.Engine.xml"));
        var members = doc.Descendants("member").ToDictionary(m => (string)m.Attribute("name")!, m => m);
        var functions = Functions().ToList();
        functions.Count.ShouldBeGreaterThan(20);
        functions
            .Where(f => !members.Any(m => m.Key.StartsWith($"M:{f.DeclaringType!.FullName!.Replace('+', '.')}.{f.Name}", StringComparison.Ordinal)
                && !string.IsNullOrWhiteSpace((string?)m.Value.Element("source"))))
            .Select(f => $"{f.DeclaringType!.Name}.{f.Name}")
            .Distinct()
            .ShouldBeEmpty();
    }

    [Fact]
    public void No_public_function_takes_or_returns_a_bare_double_for_a_quantity()
    {
        // A number without a unit may be a plain ratio, a percentage, a count or an angle in the name's own unit; a quantity may not.
        var quantity = new[] { "torque", "pressure", "mass", "length", "width", "depth", "force", "speed", "temperature", "radius", "diameter", "load", "distance", "height" };
        Functions()
            .SelectMany(f => f.GetParameters().Where(p => p.ParameterType == typeof(double)).Select(p => (f, Name: p.Name!))
                .Concat(f.ReturnType == typeof(double) ? [(f, Name: f.Name)] : []))
            .Where(p => quantity.Any(q => p.Name.Contains(q, StringComparison.OrdinalIgnoreCase))
                && !new[] { "Ratio", "Percent", "Factor", "Index", "Inches", "Millimetres", "Degrees", "Code" }.Any(u => p.Name.Contains(u, StringComparison.OrdinalIgnoreCase)))
            .Select(p => $"{p.f.DeclaringType!.Name}.{p.f.Name}: {p.Name}")
            .ShouldBeEmpty();
    }

    [Fact]
    public void Every_figure_names_its_source_and_says_what_it_is()
    {
        Figures.List.Count.ShouldBeGreaterThan(10);
        Figures.List.Where(f => f.Source.Text.Length < 4 || f.What.Length < 8).Select(f => f.Key).ShouldBeEmpty();
        Figures.List.Where(f => !f.Key.Contains('.', StringComparison.Ordinal)).Select(f => f.Key).ShouldBeEmpty();
    }

    [Fact]
    public void Every_figure_that_the_code_asks_for_is_carried()
    {
        var known = Figures.List.Select(f => f.Key).ToHashSet(StringComparer.Ordinal);
        var asked = House.Files("src", "*.cs", "*.razor")
            .SelectMany(f => System.Text.RegularExpressions.Regex.Matches(File.ReadAllText(f), "Figures\\.Of\\(\"(?<key>[^\"{]+)\"\\)").Select(m => m.Groups["key"].Value))
            .Distinct()
            .ToList();
        asked.Count.ShouldBeGreaterThan(20);
        asked.Where(k => !known.Contains(k)).ShouldBeEmpty();
    }

    [Fact]
    public void Every_unit_of_every_quantity_is_read_back_as_itself()
    {
        var checkedUnits = 0;
        foreach (var type in typeof(Length).Assembly.GetExportedTypes().Where(t => t.IsValueType && t.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IQuantity<>))))
        {
            checkedUnits += (int)typeof(EngineTests).GetMethod(nameof(ReadBack), BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(type).Invoke(null, null)!;
        }

        checkedUnits.ShouldBeGreaterThan(30);
    }

    private static int ReadBack<T>() where T : struct, IQuantity<T>
    {
        foreach (var unit in T.Units)
        {
            var read = Quantity.Read<T>($"12.5 {unit.Symbol}");
            read.IsRead.ShouldBeTrue($"{typeof(T).Name} {unit.Symbol}");
            read.Value.In(unit.Symbol).ShouldBe(12.5, 1e-9);
        }

        return T.Units.Count;
    }

    private static IEnumerable<MethodInfo> Functions() =>
        Engine.GetExportedTypes()
            .Where(t => t.IsAbstract && t.IsSealed)
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(m => !m.IsSpecialName);
}
