using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Tests;

/// <summary>The good files that the tests start from.</summary>
internal static class Sample
{
    public static string Catalog => Read("catalog.proc");

    public static string Cab => Read("cab.proc");

    public static string Evaporator => Read("evaporator.proc");

    public static SyntaxTree Parse(string content) => SyntaxTree.Parse(new SourceText("a.proc", content));

    private static string Read(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Samples", name));
}
