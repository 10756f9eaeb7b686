using ProcScript.Analysis;
using ProcScript.Analysis.Runs;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Jobs;

/// <summary>The procedures and machines that a document declares, as the analysis knows them.</summary>
internal static class JobsInText
{
    /// <summary>The declaration that holds an offset, or the last one before it: what is being typed at its end belongs to it.</summary>
    public static DeclarationSyntax? DeclarationAt(Asked asked, int offset) =>
        asked.Tree.Root.Declarations.LastOrDefault(declaration => declaration.Span.Start <= offset);

    /// <summary>The procedure of a declaration in every variant with every choice of arguments; the plain one first.</summary>
    public static IEnumerable<ProcedureReport> Reports(Asked asked, DeclarationSyntax declaration) => asked.Analysis.Report.Procedures
        .Where(report => report.Procedure.Declared.Path == asked.Path && report.Procedure.Declared.Span == declaration.Name.Span);

    /// <summary>The procedure at an offset with the machine as its steps find it; null where there is none or its machine has errors.</summary>
    public static ProcedureTrial? TrialAt(Asked asked, int offset) =>
        DeclarationAt(asked, offset) is ProcedureSyntax procedure && Reports(asked, procedure).FirstOrDefault() is { } report
            ? ProcedureTrial.Of(asked.Analysis.Library, report.Procedure, report.Outcome.Strip)
            : null;

    /// <summary>The machine that a name means in a document, with the fewest options; null where it is not known.</summary>
    public static Machine? MachineNamed(Asked asked, string name)
    {
        var reach = asked.Analysis.Names.Reach(asked.Path);
        return asked.Analysis.Library.Machines.FirstOrDefault(machine => machine.Name == name && reach.Contains(machine.Declared.Path));
    }

    /// <summary>The machine that an offset is about.</summary>
    public static Machine? MachineAt(Asked asked, int offset) => DeclarationAt(asked, offset) switch
    {
        MachineSyntax machine => MachineNamed(asked, machine.Name.Text),
        ProcedureSyntax procedure => MachineNamed(asked, procedure.Machine.Text),
        _ => null,
    };
}
