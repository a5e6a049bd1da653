using WireCoach.WebUi.Diagrams;

namespace WireCoach.WebUi.Tests.Diagrams;

internal static class Boxes
{
    /// <summary>No text leaves the picture, lies on another text, or on a wire or symbol.</summary>
    public static void NothingOverlaps(string name, Canvas canvas, double width, double height)
    {
        for (var one = 0; one < canvas.Texts.Count; one++)
        {
            var text = canvas.Texts[one];
            Assert.True(text is { Left: >= 0, Top: >= 0 } && text.Right <= width && text.Bottom <= height, $"{name}: '{text.Text}' leaves the picture");
            for (var other = one + 1; other < canvas.Texts.Count; other++)
            {
                Assert.False(text.Overlaps(canvas.Texts[other]), $"{name}: '{text.Text}' lies on '{canvas.Texts[other].Text}'");
            }

            foreach (var stroke in canvas.Strokes)
            {
                Assert.False(text.Overlaps(stroke), $"{name}: '{text.Text}' lies on a wire or symbol at {stroke.Left}, {stroke.Top}");
            }
        }
    }
}
