namespace WireCoach.Service.Phrasing;

/// <summary>Ends an answer that is larger than any rewording can be, or that is a refusal.</summary>
internal sealed class LimitedAnswers(HttpMessageHandler inner) : DelegatingHandler(inner)
{
    private const int Most = 256 * 1024;

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var response = await base.SendAsync(request, cancellationToken);
        if (!response.IsSuccessStatusCode)
        {
            using (response)
            {
                // The status says enough: what a server writes into its refusals is read by nobody.
                throw new HttpRequestException(HttpRequestError.Unknown, "The server refused.", null, response.StatusCode);
            }
        }

        var whole = response.Content;
        var limited = new StreamContent(new LimitedStream(await whole.ReadAsStreamAsync(cancellationToken), Most));
        foreach (var (name, values) in whole.Headers.Where(header => header.Key != "Content-Length"))
        {
            limited.Headers.TryAddWithoutValidation(name, values);
        }

        response.Content = limited;
        return response;
    }

    /// <summary>Reads so many bytes and then fails.</summary>
    private sealed class LimitedStream(Stream inner, int most) : Stream
    {
        private long _read;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => _read;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count) => Counted(inner.Read(buffer, offset, count));

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            Counted(await inner.ReadAsync(buffer, cancellationToken));

        public override async Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            Counted(await inner.ReadAsync(buffer.AsMemory(offset, count), cancellationToken));

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        protected override void Dispose(bool disposing)
        {
            inner.Dispose();
            base.Dispose(disposing);
        }

        private int Counted(int count) => (_read += count) <= most ? count : throw new IOException("The answer is larger than a rewording can be.");
    }
}
