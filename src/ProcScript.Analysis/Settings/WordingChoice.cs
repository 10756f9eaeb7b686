namespace ProcScript.Analysis.Settings;

/// <summary>What texts are held to.</summary>
public enum WordingChoice
{
    /// <summary>All rules of wording, those that know English among them.</summary>
    English,

    /// <summary>The rules that hold in any language.</summary>
    Neutral,
}
