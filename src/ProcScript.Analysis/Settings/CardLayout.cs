namespace ProcScript.Analysis.Settings;

/// <summary>How the cards of a pack lie on their sheets.</summary>
public enum CardLayout
{
    /// <summary>One after the other, as many on a sheet as it holds.</summary>
    Flow,

    /// <summary>Each begins a sheet of its own.</summary>
    Card,
}
