package org.geneticsrules.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.document.Reference;

/** What documents of several kinds have in common. */
final class Shared {

    /** Numbers that are not exact are written with so many digits. */
    private static final MathContext DIGITS = new MathContext(12);

    private Shared() {}

    /** The text of a schema that is shipped with the library. */
    static String schema(String kind) {
        String name = kind + ".schema.json";
        try (InputStream in = Shared.class.getResourceAsStream(name)) {
            return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("the resource " + name + " of this library cannot be read", e);
        }
    }

    /** Whether there is a schema of documents of this kind. */
    static boolean isKind(String word) {
        return word.matches("[a-z]+(-[a-z]+)*") && Shared.class.getResource(word + ".schema.json") != null;
    }

    /** Which document is meant. */
    static Node reference(Reference document) {
        return new ObjectBuilder()
                .with("id", document.id())
                .with("version", document.version())
                .with("sha256", document.sha256())
                .build();
    }

    /** A number that is not exact. */
    static Node decimal(double number) {
        return Node.text(BigDecimal.valueOf(number).round(DIGITS).toString());
    }
}
