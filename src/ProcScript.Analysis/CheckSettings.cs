namespace ProcScript.Analysis;

/// <summary>What a shop may choose about the checks.</summary>
public sealed record CheckSettings
{
    /// <summary>What holds where nothing is chosen.</summary>
    public static CheckSettings Usual { get; } = new();

    /// <summary>Whether prose is held to the rules that know English.</summary>
    public bool EnglishWording { get; init; } = true;

    /// <summary>The day of the check, after which allowances with an earlier last day are over; null where none is ever over.</summary>
    public DateOnly? Today { get; init; }
}
