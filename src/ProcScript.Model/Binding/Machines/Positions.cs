using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Resolves the positions of controls.</summary>
internal static class Positions
{
    /// <summary>The number of the position; -1 with a finding where there is none.</summary>
    public static int Find(Control control, WordSyntax position, BindingPlace place, FindingSink sink)
    {
        if (position.IsMissing)
        {
            sink.Poison();
            return -1;
        }

        var wanted = place.Bindings.Find(position.Text)?.Value ?? position.Text;
        var index = control.Positions.IndexOf(wanted);
        if (index < 0)
        {
            var near = new NearNames(control.Positions).Find(wanted, sink);
            sink.Report(UnknownPosition.At(control, wanted, near, position, place), place);
        }

        return index;
    }
}
