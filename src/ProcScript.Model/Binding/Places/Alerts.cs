using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Places;

/// <summary>Binds alerts.</summary>
internal static class Alerts
{
    /// <summary>The alert meant.</summary>
    public static Alert Bind(AlertSyntax alert, BindingPlace place, FindingSink sink) => new(
        alert.Keyword.Text switch
        {
            "danger" => SignalWord.Danger,
            "warning" => SignalWord.Warning,
            "caution" => SignalWord.Caution,
            _ => SignalWord.Notice,
        },
        AuthorText.Bind(alert.Text, place, sink),
        place.At(alert.Span),
        alert.Phase);
}
