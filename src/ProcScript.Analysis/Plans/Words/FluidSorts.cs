using System.Text.RegularExpressions;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What sort of fluid something is, as far as its marks and the English words of its title say; common practice, no source.</summary>
internal static partial class FluidSorts
{
    /// <summary>What the trade calls emptying or filling it, a message's name; null where its sort is not known.</summary>
    public static string? Verb(Fluid fluid, Verb verb) => verb switch
    {
        Model.Procedures.Verb.Empty when FluidWords.IsRefrigerant(fluid) => "recover",
        Model.Procedures.Verb.Fill when FluidWords.IsRefrigerant(fluid) => "charge",
        Model.Procedures.Verb.Empty when IsGas(fluid) => "vent",
        Model.Procedures.Verb.Fill when IsGas(fluid) => "let-in",
        Model.Procedures.Verb.Empty when Liquid().IsMatch(fluid.Title) => "drain",
        _ => null,
    };

    private static bool IsGas(Fluid fluid) => Gas().IsMatch(fluid.Title) && !Liquid().IsMatch(fluid.Title);

    [GeneratedRegex(@"\b(compressed air|air|nitrogen|steam)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Gas();

    [GeneratedRegex(@"\b(oil|coolant|water|fuel|diesel|petrol|fluid|brine|antifreeze)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Liquid();
}
