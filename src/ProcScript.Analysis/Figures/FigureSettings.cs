using ProcScript.Analysis.Settings;
using ProcScript.Model.Figures;

namespace ProcScript.Analysis.Figures;

/// <summary>What a shop has chosen about pictures.</summary>
internal static class FigureSettings
{
    /// <summary>What is too large.</summary>
    public static FigureLimits Limits(PathSettings settings) =>
        new(settings.Get(SettingsTable.FigureKilobytes) * 1000L, settings.Get(SettingsTable.FigureMegapixels) * 1_000_000L);
}
