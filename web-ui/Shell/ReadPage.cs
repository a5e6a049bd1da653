using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;

namespace WireCoach.WebUi.Shell;

/// <summary>A page that is not shown before all that it shows was read.</summary>
/// <remarks>The framework shows a page once while it still reads, which would be the page of a session that is not there.</remarks>
public abstract class ReadPage : ComponentBase
{
    private bool _read;

    [CascadingParameter]
    protected HttpContext Http { get; set; } = default!;

    /// <exception cref="TimeoutException">The reading was given up. The framework shows half a page where a reading was only cancelled.</exception>
    public override async Task SetParametersAsync(ParameterView parameters)
    {
        parameters.SetParameterProperties(this);
        if (!_read)
        {
            try
            {
                await Read(Http.RequestAborted);
            }
            catch (OperationCanceledException given)
            {
                throw new TimeoutException("A page was given up before it was read.", given);
            }
        }

        _read = true;
        await base.SetParametersAsync(ParameterView.Empty);
    }

    /// <summary>Reads what the page shows, once.</summary>
    protected abstract Task Read(CancellationToken cancel);
}
