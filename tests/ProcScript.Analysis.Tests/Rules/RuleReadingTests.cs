using System.Reflection;
using ProcScript.Analysis.Rules;
using ProcScript.Model;

namespace ProcScript.Analysis.Tests.Rules;

/// <summary>What rules read. A check after an edit asks a rule again where what it read changed; so it must not read what is not noted.</summary>
public sealed class RuleReadingTests
{
    private const BindingFlags All = BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    private static readonly Type[] Watched = [typeof(StripRule), typeof(RefitRunRule), typeof(OutcomeRule), typeof(FamilyRule), typeof(MachineRule), typeof(KindRule), typeof(TorqueRule), typeof(LibraryRule)];

    [Fact]
    public void No_rule_has_a_library_in_its_hands_but_one_that_notes_what_is_read()
    {
        var rules = typeof(AnalysisRules).Assembly.GetTypes().Where(type => Watched.Any(rule => rule.IsAssignableFrom(type))).ToList();

        Assert.True(rules.Count > 60, $"{rules.Count} rules");
        Assert.Empty(rules.SelectMany(rule => rule.GetNestedTypes(All).Prepend(rule)).Where(HasLibrary).Select(type => type.FullName));
    }

    [Fact]
    public void A_rule_with_a_library_is_found()
    {
        Assert.True(HasLibrary(typeof(Careless)));
        Assert.False(HasLibrary(typeof(RuleReadingTests)));
    }

    private static bool HasLibrary(Type type) =>
        type.GetFields(All).Select(field => field.FieldType)
            .Concat(type.GetMethods(All).Cast<MethodBase>().Concat(type.GetConstructors(All)).SelectMany(method => method.GetParameters().Select(parameter => parameter.ParameterType)
                .Concat(method.GetMethodBody()?.LocalVariables.Select(local => local.LocalType) ?? [])))
            .Any(one => one == typeof(Library) || one == typeof(LibraryReport) || one == typeof(ProcedureReport));

    private static class Careless
    {
        public static int Count(ProcedureReport report)
        {
            var library = report.Library;
            return library.Trees.Count;
        }
    }
}
