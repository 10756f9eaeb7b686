using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Saying;

/// <summary>What English names of parts and joints tell of them.</summary>
internal static partial class TradeNouns
{
    /// <summary>A title that ends in what lies between two faces.</summary>
    [GeneratedRegex(@"\b(gaskets?|seals?|o-?rings?|packing|sealing rings?)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Gasket();

    /// <summary>What stays on and lets a part swing or hang.</summary>
    [GeneratedRegex(@"\b(hinges?|pivots?|hooks?|tethers?|straps?|lugs?|cords?|chains?|lanyards?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Swinging();

    /// <summary>The name of a joint that ends in what it is made of.</summary>
    [GeneratedRegex(@"(^|_)(?<noun>bolt|screw|nut|clip|tie)s?(\[|$)", RegexOptions.CultureInvariant)]
    public static partial Regex Noun();

    /// <summary>Bolts, screws and studs.</summary>
    [GeneratedRegex(@"\b(bolts?|screws?|studs?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Turned();

    /// <summary>Nuts.</summary>
    [GeneratedRegex(@"\bnuts?\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    public static partial Regex Nut();
}
