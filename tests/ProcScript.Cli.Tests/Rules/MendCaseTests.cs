using ProcScript.Analysis;
using ProcScript.Analysis.Mending;
using ProcScript.Cli.Tests.Cases;

namespace ProcScript.Cli.Tests.Rules;

/// <summary>All fixes of all rules together, on the cases of each.</summary>
public sealed class MendCaseTests
{
    public static TheoryData<string> Codes => RuleCaseTests.Codes;

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_fixes_settle_in_a_text_that_has_nothing_more_to_mend(string code)
    {
        foreach (var library in Case.OfRule(code, "fires").Select(Library.Of))
        {
            foreach (var request in new[] { new MendRequest(), new MendRequest { NeedsLook = true } })
            {
                var first = LibraryMend.Run(library.Store, CheckSettings.Usual, request, TestContext.Current.CancellationToken);
                var mended = library.With(library.Files.SetItems(first.Files.Select(file => KeyValuePair.Create(file.Path, file.After))));
                var second = LibraryMend.Run(mended.Store, CheckSettings.Usual, request, TestContext.Current.CancellationToken);

                Assert.Empty(first.Fighting);
                Assert.Empty(first.Refused.Select(refused => $"{refused.Finding.Rule.Code}: {refused.Because}"));
                Assert.Empty(second.Files);
                Assert.Equal(first.Left.Count(left => left.Because == LeftBecause.NoFix), second.Left.Count(left => left.Because == LeftBecause.NoFix));
            }
        }
    }
}
