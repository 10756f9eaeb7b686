namespace ProcScript.LanguageServer.Workspaces;

/// <summary>Hears of the analyses of libraries; on any thread.</summary>
internal interface IAnalysisListener
{
    /// <summary>One is done, and still about the present.</summary>
    void Analysed(LibraryAnalysis analysis);

    /// <summary>One came to grief by a fault of ours.</summary>
    void Failed(Exception fault);
}
