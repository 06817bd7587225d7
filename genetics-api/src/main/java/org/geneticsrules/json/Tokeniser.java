package org.geneticsrules.json;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.geneticsrules.document.Node;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.TokenStreamFactory;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.json.JsonFactory;

/**
 * The one class that knows Jackson: text to a tree with places, or the first problem of syntax.
 *
 * <p>The limits are checked here, token by token, so that messages name the limit and never Jackson's settings. Jackson's own limits
 * are set so wide that they come second.
 */
final class Tokeniser {

    /** What Jackson adds for its own users: settings, and addresses in its buffers. */
    private static final Pattern ADVICE =
            Pattern.compile("(: enable| \\(start marker| \\(not recognized| \\(\\w+, to allow)[\\s\\S]*");

    private final Limits limits;
    private final JsonParser parser;
    private final Position end;
    private int depth;

    private Tokeniser(Limits limits, String text) {
        this.limits = limits;
        this.end = Utf8.end(text);
        this.parser = factory(text.length() + 1).createParser(ObjectReadContext.empty(), text);
    }

    /** Reads a source. Ends in a tree, in a problem of syntax, or in an I/O failure. */
    static Located read(Source source, Limits limits) throws IOException {
        return read(Utf8.read(source, limits.bytes()), limits);
    }

    private static Located read(String text, Limits limits) {
        Tokeniser tokeniser = new Tokeniser(limits, text);
        try (JsonParser open = tokeniser.parser) {
            JsonToken first = open.nextToken();
            if (first == null) {
                throw tokeniser.problem("empty-document", "the document is empty", "a JSON object", tokeniser.end);
            }
            Located root = tokeniser.value(first);
            if (open.nextToken() != null) {
                throw tokeniser.problem(
                        "trailing-text", "the document goes on after its end", "nothing more", tokeniser.here());
            }
            return root;
        } catch (JacksonException e) {
            throw tokeniser.notJson(e);
        }
    }

    private static TokenStreamFactory factory(int length) {
        return JsonFactory.builder()
                // Names of hostile files must not stay in tables that other documents share.
                .disable(TokenStreamFactory.Feature.CANONICALIZE_PROPERTY_NAMES)
                .disable(TokenStreamFactory.Feature.INTERN_PROPERTY_NAMES)
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(length)
                        .maxStringLength(length)
                        .maxNameLength(length)
                        .maxNumberLength(length)
                        .build())
                .build();
    }

    private Located value(JsonToken token) {
        Position at = here();
        return switch (token) {
            case START_OBJECT -> nested(at, () -> object(at));
            case START_ARRAY -> nested(at, () -> list(at));
            case VALUE_STRING ->
                Located.leaf(at, Node.text(checked(parser.getString(), "text", limits.textLength(), at)));
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> Located.leaf(at, new Node.NumberNode(number(at)));
            case VALUE_TRUE, VALUE_FALSE -> Located.leaf(at, Node.flag(token == JsonToken.VALUE_TRUE));
            case VALUE_NULL -> Located.leaf(at, new Node.NullNode());
            default -> throw problem("not-json", "unexpected " + token, "a JSON value", at);
        };
    }

    private Located nested(Position at, Supplier<Located> container) {
        depth++;
        if (depth > limits.depth()) {
            throw problem(
                    "too-deep",
                    "objects and lists lie more than " + limits.depth() + " deep within one another",
                    "at most " + limits.depth(),
                    at);
        }
        Located read = container.get();
        depth--;
        return read;
    }

    private Located object(Position at) {
        Map<String, Located> members = new LinkedHashMap<>();
        Map<String, Node> nodes = new LinkedHashMap<>();
        for (JsonToken token = next(); token != JsonToken.END_OBJECT; token = next()) {
            Position start = here();
            String name = checked(parser.currentName(), "name", limits.nameLength(), start);
            Located before = members.get(name);
            if (before != null) {
                throw problem(
                        "duplicate-key",
                        "the name \"" + name + "\" stands twice in one object, first at " + before.at(),
                        "each name once",
                        start);
            }
            Located member = value(next()).from(start);
            members.put(name, member);
            nodes.put(name, member.node());
            limitItems(members.size(), "members", start);
        }
        return new Located(at, new Node.ObjectNode(nodes), members, List.of());
    }

    private Located list(Position at) {
        List<Located> items = new ArrayList<>();
        for (JsonToken token = next(); token != JsonToken.END_ARRAY; token = next()) {
            items.add(value(token));
            limitItems(items.size(), "items", here());
        }
        return new Located(
                at, new Node.ListNode(items.stream().map(Located::node).toList()), Map.of(), items);
    }

    private JsonToken next() {
        JsonToken token = parser.nextToken();
        if (token == null) {
            throw problem("not-json", "the document ends in the middle", "the rest of it", end);
        }
        return token;
    }

    private void limitItems(int size, String what, Position at) {
        if (size > limits.items()) {
            throw problem(
                    "too-many-items", "more than " + limits.items() + " " + what, "at most " + limits.items(), at);
        }
    }

    /** Bounds the length and the exponent before anything is computed: 1e999999999 is short to write and long to expand. */
    private BigDecimal number(Position at) {
        String written = checked(parser.getString(), "number", limits.numberLength(), at);
        BigDecimal value;
        try {
            value = new BigDecimal(written);
        } catch (NumberFormatException e) {
            throw outOfRange(written, at);
        }
        if (Math.abs((long) value.scale()) > limits.numberLength()) {
            throw outOfRange(written, at);
        }
        return value;
    }

    private ProblemsException outOfRange(String written, Position at) {
        return problem(
                "number-out-of-range",
                "the number " + written + " is out of range",
                "a power of ten of at most " + limits.numberLength(),
                at);
    }

    private String checked(@Nullable String written, String what, int limit, Position at) {
        String present = written == null ? "" : written;
        if (present.length() > limit) {
            throw problem(
                    "too-long-" + what,
                    "a " + what + " of " + present.length() + " characters",
                    "at most " + limit + " characters",
                    at);
        }
        Utf8.loneSurrogate(present).ifPresent(half -> {
            throw problem(
                    "lone-surrogate",
                    "a " + what + " holds " + half + ", half of a pair, which is no character",
                    "whole characters",
                    at);
        });
        return present;
    }

    private ProblemsException notJson(JacksonException failure) {
        TokenStreamLocation location = failure.getLocation();
        Position at = location == null || location.getLineNr() < 1 || location.getColumnNr() < 1
                ? here()
                : within(new Position(location.getLineNr(), location.getColumnNr()));
        String message = ADVICE.matcher(failure.getOriginalMessage()).replaceFirst("");
        return problem("not-json", "this is not JSON: " + message, "JSON by RFC 8259", at);
    }

    private Position here() {
        TokenStreamLocation location = parser.currentTokenLocation();
        return within(new Position(Math.max(1, location.getLineNr()), Math.max(1, location.getColumnNr())));
    }

    /** Jackson may place the end of input one step after it. */
    private Position within(Position position) {
        boolean after =
                position.line() > end.line() || (position.line() == end.line() && position.column() > end.column());
        return after ? end : position;
    }

    private ProblemsException problem(String code, String message, String expected, Position at) {
        return new ProblemsException(
                Problem.of(Stage.SYNTAX, code, "", message).expecting(expected).at(at));
    }
}
