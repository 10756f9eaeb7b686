using ProcScript.Analysis;
using ProcScript.Analysis.Runs;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
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
        .Where(report => report.Procedure.IsOf(asked.Path, declaration));

    /// <summary>The procedure at an offset with the machine as its steps find it; null where there is none or its machine has errors.</summary>
    public static ProcedureTrial? TrialAt(Asked asked, int offset) =>
        DeclarationAt(asked, offset) is ProcedureSyntax declaration && ProcedureAt(asked, declaration, offset) is { } procedure
            ? ProcedureTrial.Of(
                asked.Analysis.Library,
                procedure,
                asked.Analysis.IsJudged ? Reports(asked, declaration).First(report => ReferenceEquals(report.Procedure, procedure)).Outcome.Strip : null)
            : null;

    /// <summary>The procedure around an offset as the <c>when</c> blocks there ask for, the plainest such; null where it is not known.</summary>
    public static Procedure? ProcedureAt(Asked asked, ProcedureSyntax declaration, int offset)
    {
        var tests = TestsAt(declaration, offset);
        var procedures = asked.Analysis.Library.Procedures.Where(procedure => procedure.IsOf(asked.Path, declaration)).ToList();
        return procedures.Find(procedure => tests.All(test => Holds(test, declaration, procedure))) ?? procedures.FirstOrDefault();
    }

    /// <summary>The machine that a name means in a document, with the fewest options; null where it is not known.</summary>
    public static Machine? MachineNamed(Asked asked, string name)
    {
        var reach = asked.Analysis.Names.Reach(asked.Path);
        return asked.Analysis.Library.Machines.FirstOrDefault(machine => machine.Name == name && reach.Contains(machine.Declared.Path));
    }

    /// <summary>The machine that an offset is about.</summary>
    public static Machine? MachineAt(Asked asked, int offset) => DeclarationAt(asked, offset) switch
    {
        MachineSyntax machine => MachineAt(asked, machine, machine.Name.Text, offset),
        ProcedureSyntax procedure => ProcedureAt(asked, procedure, offset)?.Machine ?? MachineAt(asked, procedure, procedure.Machine.Text, offset),
        _ => null,
    };

    private static Machine? MachineAt(Asked asked, DeclarationSyntax declaration, string name, int offset)
    {
        var plain = MachineNamed(asked, name);
        var tests = TestsAt(declaration, offset);
        return asked.Analysis.Library.Machines.FirstOrDefault(machine =>
            machine.Declared == plain?.Declared && IsFor(declaration, machine) && tests.All(test => test.Value is not null || Has(machine, test))) ?? plain;
    }

    /// <summary>What the <c>when</c> blocks around an offset ask for.</summary>
    private static List<TestSyntax> TestsAt(DeclarationSyntax declaration, int offset) =>
    [
        .. declaration.DescendantsAndSelf().OfType<WhenSyntax>()
            .Where(branch => branch.Test.Span.End < offset && offset < branch.Span.End)
            .Select(branch => branch.Test),
    ];

    /// <summary>Whether a test holds in a procedure; one of a variable that takes all its values in turn does.</summary>
    private static bool Holds(TestSyntax test, ProcedureSyntax node, Procedure procedure)
    {
        if (test.Value is null)
        {
            return Has(procedure.Machine, test);
        }

        var index = node.Parameters.Select(parameter => parameter.Name.Text).ToList().IndexOf(test.Name.Text);
        return index < 0 || procedure.Arguments[index] == test.Value.Text != test.Negated;
    }

    /// <summary>Whether a machine has what a procedure is written for.</summary>
    private static bool IsFor(DeclarationSyntax declaration, Machine machine) => declaration is not ProcedureSyntax procedure
        || procedure.Variants.All(variants => variants.Options.All(name => machine.With.Any(option => option.Name == name.Text) == variants.IsWith));

    private static bool Has(Machine machine, TestSyntax test) => machine.With.Any(option => option.Name == test.Name.Text) != test.Negated;
}
