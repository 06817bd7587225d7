package org.geneticsrules.document;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import org.geneticsrules.document.Node.FlagNode;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.NullNode;
import org.geneticsrules.document.Node.NumberNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;

/** The one canonical spelling of a document, by RFC 8785, and its SHA-256. Stateless and thread-safe. */
public final class Canonical {

    /** RFC 8785 spells numbers as IEEE doubles do; beyond this, whole numbers would lose digits. */
    private static final BigDecimal LARGEST_EXACT = BigDecimal.valueOf(1L << 53);

    private Canonical() {}

    /**
     * Returns the canonical JSON text.
     *
     * @param node a document or a part of one
     * @return JSON without spaces, members sorted by name
     */
    public static String text(Node node) {
        StringBuilder out = new StringBuilder();
        write(node, out);
        return out.toString();
    }

    /**
     * Returns the SHA-256 of the canonical text in UTF-8.
     *
     * @param node a document
     * @return 64 lower-case hexadecimal digits
     */
    public static String sha256(Node node) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(text(node).getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform provides SHA-256", e);
        }
    }

    private static void write(Node node, StringBuilder out) {
        if (node instanceof ObjectNode object) {
            String comma = "{";
            for (Map.Entry<String, Node> member : new TreeMap<>(object.members()).entrySet()) {
                out.append(comma);
                quote(member.getKey(), out);
                out.append(':');
                write(member.getValue(), out);
                comma = ",";
            }
            out.append(object.members().isEmpty() ? "{}" : "}");
        } else if (node instanceof ListNode list) {
            out.append('[');
            for (int i = 0; i < list.items().size(); i++) {
                if (i > 0) {
                    out.append(',');
                }
                write(list.items().get(i), out);
            }
            out.append(']');
        } else if (node instanceof TextNode text) {
            quote(text.value(), out);
        } else if (node instanceof NumberNode number) {
            out.append(number(number.value()));
        } else if (node instanceof FlagNode flag) {
            out.append(flag.value());
        } else if (node instanceof NullNode) {
            out.append("null");
        }
    }

    /** Whole numbers exactly; other numbers in Java's plain decimal spelling, which no hashed document contains. */
    private static String number(BigDecimal value) {
        if (value.signum() == 0) {
            return "0";
        }
        BigDecimal stripped = value.stripTrailingZeros();
        boolean whole = stripped.scale() <= 0 && stripped.abs().compareTo(LARGEST_EXACT) <= 0;
        return whole ? stripped.toPlainString() : stripped.toString();
    }

    private static void quote(String text, StringBuilder out) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\b' -> out.append("\\b");
                case '\f' -> out.append("\\f");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                default -> {
                    if (c < 0x20) {
                        out.append("\\u00").append(HexFormat.of().toHexDigits((byte) c));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }
}
