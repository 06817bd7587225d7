package org.geneticsrules.document;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.geneticsrules.document.Difference.Kind;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.NumberNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.jspecify.annotations.Nullable;

/** Walks two documents side by side and notes what is otherwise. */
final class TreeComparison {

    /** Numbers that are not exact are written as texts: with a point, or a power of ten. */
    private static final Pattern DECIMAL = Pattern.compile("-?[0-9]{1,400}(\\.[0-9]{1,400})?([eE][-+]?[0-9]{1,4})?");

    private static final Pattern WHOLE = Pattern.compile("-?[0-9]{1,4000}");

    /** Texts that are compared as texts whatever they look like. */
    private static final Set<String> NO_NUMBERS = Set.of("id", "version", "sha256", "name", "title", "date");

    private static final String NUMERATOR = "numerator";
    private static final String DENOMINATOR = "denominator";

    private final BigDecimal tolerance;
    private final List<Difference> found;

    TreeComparison(double tolerance, List<Difference> found) {
        this.tolerance = BigDecimal.valueOf(tolerance);
        this.found = found;
    }

    void compare(Spot at, Node before, Node after) {
        if (before instanceof ObjectNode one && after instanceof ObjectNode other) {
            if (isFraction(one) && isFraction(other)) {
                fractions(at, one, other);
            } else {
                members(at, one, other, Set.of());
            }
        } else if (before instanceof ListNode one && after instanceof ListNode other) {
            items(at, one.items(), other.items());
        } else if (!isSame(at, before, after)) {
            found.add(at.otherwise(Kind.CHANGED, before, after));
        }
    }

    private void members(Spot at, ObjectNode before, ObjectNode after, Set<String> known) {
        for (Map.Entry<String, Node> member : before.members().entrySet()) {
            String name = member.getKey();
            if (known.contains(name)) {
                continue;
            }
            Node now = after.members().get(name);
            if (now == null) {
                found.add(at.member(name).removed(member.getValue()));
            } else {
                compare(at.member(name), member.getValue(), now);
            }
        }
        after.members().forEach((name, now) -> {
            if (!before.members().containsKey(name)) {
                found.add(at.member(name).added(now));
            }
        });
    }

    /** An exact chance is one number; that its two halves and its decimal move together is told once. */
    private void fractions(Spot at, ObjectNode before, ObjectNode after) {
        boolean same = whole(before, NUMERATOR)
                .multiply(whole(after, DENOMINATOR))
                .equals(whole(after, NUMERATOR).multiply(whole(before, DENOMINATOR)));
        if (same) {
            members(at, before, after, Set.of());
        } else {
            found.add(at.otherwise(Kind.CHANGED, before, after));
            members(at, before, after, Set.of(NUMERATOR, DENOMINATOR, "decimal"));
        }
    }

    private static boolean isFraction(ObjectNode node) {
        return isWhole(node.members().get(NUMERATOR)) && isWhole(node.members().get(DENOMINATOR));
    }

    private static boolean isWhole(@Nullable Node node) {
        return node instanceof TextNode text && WHOLE.matcher(text.value()).matches();
    }

    private static BigInteger whole(ObjectNode node, String name) {
        return node.members().get(name) instanceof TextNode text ? new BigInteger(text.value()) : BigInteger.ZERO;
    }

    private void items(Spot at, List<Node> before, List<Node> after) {
        ListMatch match = ListMatch.of(before, after, this::isNumber);
        for (ListMatch.Pair pair : match.pairs()) {
            Spot item = at.item(pair.label(), pair.from().orElse(0), pair.to().orElse(0));
            if (pair.from().isEmpty()) {
                found.add(item.added(after.get(pair.to().getAsInt())));
            } else if (pair.to().isEmpty()) {
                found.add(item.removed(before.get(pair.from().getAsInt())));
            } else {
                compare(
                        item,
                        before.get(pair.from().getAsInt()),
                        after.get(pair.to().getAsInt()));
            }
        }
        if (match.isReordered()) {
            found.add(at.otherwise(Kind.REORDERED, Node.texts(match.labels(before)), Node.texts(match.labels(after))));
        }
    }

    private boolean isSame(Spot at, Node before, Node after) {
        if (before.equals(after)) {
            return true;
        }
        if (NO_NUMBERS.contains(at.member())) {
            return false;
        }
        Optional<BigDecimal> one = number(before);
        Optional<BigDecimal> other = number(after);
        return before.getClass() == after.getClass()
                && one.isPresent()
                && other.isPresent()
                && isNear(one.get(), other.get());
    }

    private boolean isNear(BigDecimal one, BigDecimal other) {
        BigDecimal most = one.abs().max(other.abs()).multiply(tolerance);
        return one.subtract(other).abs().compareTo(most) <= 0;
    }

    private boolean isNumber(Node node) {
        return number(node).isPresent();
    }

    /** A number, or a text that is one and is not a whole number, since those are names and counts. */
    private static Optional<BigDecimal> number(Node node) {
        if (node instanceof NumberNode number) {
            return Optional.of(number.value());
        }
        if (node instanceof TextNode text
                && DECIMAL.matcher(text.value()).matches()
                && !WHOLE.matcher(text.value()).matches()) {
            return Optional.of(new BigDecimal(text.value()));
        }
        return Optional.empty();
    }
}
