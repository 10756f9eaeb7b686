namespace ProcScript.Analysis.Tests.Plans;

public class QuestionStepTests
{
    /// <summary>The question beside its lines, and the step that it belongs to; empty for none.</summary>
    [Theory]
    [InlineData("    undo lid_bolts  // draft: all of them?", "Undo 2 × M8 × 25 bolt")]
    [InlineData("    // draft: by hand?\n    // It is light.\n\n    remove lid", "Remove the lid")]
    [InlineData("  part lid \"lid\" {  // draft: one lid?", "Remove the lid")]
    [InlineData("    // draft: how heavy?\n    mass 1 kg", "Remove the lid")]
    [InlineData("    held by 2 m8x25 as lid_bolts  // draft: M8?", "Undo 2 × M8 × 25 bolt")]
    [InlineData("  stage \"Lid\" {  // draft: is that all?", "")]
    [InlineData("machine rig \"Rig\" {  // draft: a rig?", "")]
    public void A_question_belongs_to_the_step_that_is_about_what_it_stands_at(string lines, string step)
    {
        var at = lines.Split('\n').Single(line => line.Contains("draft:", StringComparison.Ordinal));
        var clean = string.Join('\n', lines.Split('\n').Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && line.Length > 0).Select(line => line.Split("  //")[0]));
        var all = SampleText.Catalog + """
            machine rig "Rig" {
              part lid "lid" {
                mass 1 kg
                held by 2 m8x25 as lid_bolts
              }
            }
            procedure p "P" on rig {
              goal remove lid
              stage "Lid" {
                undo lid_bolts
                remove lid
              }
            }
            """;
        Assert.Contains(clean, all, StringComparison.Ordinal);
        var text = all.Replace(clean, lines, StringComparison.Ordinal);

        var plan = PlanOf.Text(text);

        var question = Assert.Single(plan.Questions);
        Assert.Equal(Array.IndexOf(text.Split('\n'), at) + 1, question.Source.Line);
        Assert.Equal(at.IndexOf("//", StringComparison.Ordinal) + 1, question.Source.Column);
        Assert.EndsWith(question.Text, at, StringComparison.Ordinal);
        Assert.Equal(step, question.Step == 0 ? "" : plan.AllSteps().Single(one => one.Number == question.Step).Text);
    }
}
