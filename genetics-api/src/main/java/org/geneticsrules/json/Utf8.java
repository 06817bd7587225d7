package org.geneticsrules.json;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/** Bytes to text, strictly: a byte that is not UTF-8 is a problem with a position, not a replacement character. */
final class Utf8 {

    private static final int BUFFER = 8192;

    private Utf8() {}

    /** Reads a source up to the limit; a byte order mark at the start is passed over, as RFC 8259 permits. */
    static String read(Source source, int limit) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (InputStream in = source.open()) {
            byte[] buffer = new byte[BUFFER];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                if (bytes.size() + read > limit) {
                    throw new ProblemsException(Problem.of(
                                    Stage.SYNTAX,
                                    "too-many-bytes",
                                    "",
                                    "the document is larger than " + limit + " bytes")
                            .expecting("at most " + limit + " bytes"));
                }
                bytes.write(buffer, 0, read);
            }
        }
        String text = decode(bytes.toByteArray());
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    /**
     * Encodes a text. A lone surrogate, which UTF-8 cannot spell, becomes the three bytes that its number would have; no decoder
     * accepts them, so the reader reports it where it stands.
     */
    static byte[] encode(String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(text.length());
        text.codePoints().forEach(c -> {
            if (c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE) {
                bytes.write(0xE0 | (c >> 12));
                bytes.write(0x80 | ((c >> 6) & 0x3F));
                bytes.write(0x80 | (c & 0x3F));
            } else {
                bytes.writeBytes(Character.toString(c).getBytes(StandardCharsets.UTF_8));
            }
        });
        return bytes.toByteArray();
    }

    private static String decode(byte[] bytes) {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        CharBuffer text = CharBuffer.allocate(bytes.length);
        CoderResult result = decoder.decode(ByteBuffer.wrap(bytes), text, true);
        text.flip();
        if (result.isError()) {
            throw new ProblemsException(
                    Problem.of(Stage.SYNTAX, "not-utf-8", "", "the bytes from here on are not UTF-8")
                            .expecting("a text saved in UTF-8")
                            .at(end(text.toString())));
        }
        return text.toString();
    }

    /** The position just after a text. */
    static Position end(String text) {
        int line = 1;
        int start = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean newLine = c == '\n' || (c == '\r' && !text.startsWith("\n", i + 1));
            if (newLine) {
                line++;
                start = i + 1;
            }
        }
        return new Position(line, text.length() - start + 1);
    }

    /** Whether a text holds half of a surrogate pair. */
    static Optional<String> loneSurrogate(String text) {
        return text.codePoints()
                .filter(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE)
                .mapToObj(c -> "U+" + Integer.toHexString(c).toUpperCase(Locale.ROOT))
                .findFirst();
    }
}
