namespace ProcScript.Analysis.Messages;

/// <summary>The languages that work packs can be written in.</summary>
public enum PackLanguage
{
    /// <summary>English.</summary>
    English,

    /// <summary>German.</summary>
    German,

    /// <summary>French.</summary>
    French,

    /// <summary>Spanish.</summary>
    Spanish,

    /// <summary>Polish.</summary>
    Polish,
}
