package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.testing.Once;

/** The algebra of sets of boxes, compared with plain sets of listed points in a space of 24 points. */
@Once
class BoxSetLaws {

    private static final Map<String, List<String>> VARIABLES = variables();
    private static final BoxSpace SPACE = BoxSpace.of(VARIABLES);
    private static final Set<Map<String, String>> POINTS = points();

    private static Map<String, List<String>> variables() {
        Map<String, List<String>> variables = new LinkedHashMap<>();
        variables.put("A", List.of("a1", "a2", "a3"));
        variables.put("B", List.of("b1"));
        variables.put("C", List.of("c1", "c2"));
        variables.put("D", List.of("d1", "d2", "d3", "d4"));
        return variables;
    }

    private static Set<Map<String, String>> points() {
        Set<Map<String, String>> points = new LinkedHashSet<>(Set.of(Map.of()));
        for (Map.Entry<String, List<String>> variable : VARIABLES.entrySet()) {
            Set<Map<String, String>> longer = new LinkedHashSet<>();
            for (Map<String, String> point : points) {
                for (String value : variable.getValue()) {
                    Map<String, String> more = new LinkedHashMap<>(point);
                    more.put(variable.getKey(), value);
                    longer.add(more);
                }
            }
            points = longer;
        }
        return points;
    }

    /** A set of boxes together with its points, listed by the same steps on plain sets. */
    record Both(BoxSet boxes, Set<Map<String, String>> points) {

        static Both where(String variable, Allowed allowed) {
            Set<Map<String, String>> points = new LinkedHashSet<>(POINTS);
            points.removeIf(point -> !allowed.allows(point.get(variable)));
            return new Both(SPACE.where(variable, allowed), points);
        }

        Both combine(Both other, int operation) {
            Set<Map<String, String>> result = new LinkedHashSet<>(points);
            return switch (operation) {
                case 0 -> {
                    result.addAll(other.points);
                    yield new Both(boxes.or(other.boxes), result);
                }
                case 1 -> {
                    result.retainAll(other.points);
                    yield new Both(boxes.and(other.boxes), result);
                }
                default -> {
                    result.removeAll(other.points);
                    yield new Both(boxes.minus(other.boxes), result);
                }
            };
        }
    }

    private static Arbitrary<Both> simple() {
        Arbitrary<Both> where = Arbitraries.of(VARIABLES.keySet())
                .flatMap(variable -> Combinators.combine(
                                Arbitraries.subsetOf(VARIABLES.get(variable)), Arbitraries.of(true, false))
                        .as((values, except) -> Both.where(variable, new Allowed(except, values))));
        return Arbitraries.oneOf(
                where,
                where,
                where,
                Arbitraries.of(true, false)
                        .map(all -> all ? new Both(SPACE.everything(), POINTS) : new Both(SPACE.nothing(), Set.of())));
    }

    @Provide
    Arbitrary<Both> sets() {
        return Combinators.combine(
                        simple().list().ofMinSize(1).ofMaxSize(7),
                        Arbitraries.integers().between(0, 2).list().ofSize(7))
                .as((parts, operations) -> {
                    // Balanced enough that unions of intersections and differences of unions both occur.
                    List<Both> left = new ArrayList<>(parts);
                    for (int i = 0; left.size() > 1; i++) {
                        left.add(left.remove(0).combine(left.remove(0), operations.get(i)));
                    }
                    return left.get(0);
                })
                .withoutEdgeCases();
    }

    static void theyHoldTheSamePoints(Both set) {
        assertEquals(BigInteger.valueOf(set.points().size()), set.boxes().size());
        assertEquals(set.points().isEmpty(), set.boxes().isEmpty());
        POINTS.forEach(point ->
                assertEquals(set.points().contains(point), set.boxes().contains(point), point + " in " + set.boxes()));
    }

    static void boxesAreDisjointAndMakeUpTheSet(Both set) {
        for (Map<String, String> point : POINTS) {
            long holding = set.boxes().boxes().stream()
                    .filter(box -> box.holds(point::get))
                    .count();
            assertEquals(set.points().contains(point) ? 1 : 0, holding, point + " in " + set.boxes());
        }
        set.boxes()
                .boxes()
                .forEach(box -> box.variables()
                        .forEach((variable, allowed) -> assertTrue(
                                allowed.among(VARIABLES.get(variable)).size()
                                        < VARIABLES.get(variable).size())));
    }

    static void equalityIsThatOfPoints(Both one, Both other) {
        assertEquals(one.points().equals(other.points()), one.boxes().equals(other.boxes()));
        if (one.boxes().equals(other.boxes())) {
            assertEquals(one.boxes().hashCode(), other.boxes().hashCode());
        }
    }

    static void theAlgebraIsBoolean(BoxSet a, BoxSet b, BoxSet c) {
        assertEquals(a.or(b), b.or(a));
        assertEquals(a.and(b), b.and(a));
        assertEquals(a.and(b.or(c)), a.and(b).or(a.and(c)));
        BoxSet all = SPACE.everything();
        assertEquals(all.minus(a.or(b)), all.minus(a).and(all.minus(b)));
        assertEquals(a.minus(b), a.and(all.minus(b)));
        assertEquals(a, all.minus(all.minus(a)));
        assertTrue(a.minus(a).isEmpty());
    }

    @Property
    void points(@ForAll("sets") Both set) {
        theyHoldTheSamePoints(set);
        boxesAreDisjointAndMakeUpTheSet(set);
    }

    @Property
    void steps(@ForAll("sets") Both one, @ForAll("sets") Both other) {
        for (int operation = 0; operation < 3; operation++) {
            theyHoldTheSamePoints(one.combine(other, operation));
            boxesAreDisjointAndMakeUpTheSet(one.combine(other, operation));
        }
        equalityIsThatOfPoints(one, other);
        equalityIsThatOfPoints(one.combine(other, 1), other.combine(one, 1));
    }

    @Property(tries = 300)
    void algebra(@ForAll("sets") Both a, @ForAll("sets") Both b, @ForAll("sets") Both c) {
        theAlgebraIsBoolean(a.boxes(), b.boxes(), c.boxes());
    }
}
