namespace ProcScript.Analysis;

/// <summary>What a shop may choose about the checks.</summary>
public sealed record CheckSettings
{
    /// <summary>What holds where nothing is chosen.</summary>
    public static CheckSettings Usual { get; } = new();

    /// <summary>Whether prose is held to the rules that know English.</summary>
    public bool EnglishWording { get; init; } = true;
}
