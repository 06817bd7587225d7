package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.LocusBuilder;

/**
 * A random locus: its alleles, and a dominance that is a full order, a table of all pairs, or a partial order with the rest tabled.
 *
 * @param id the locus
 * @param symbol its symbol, if it is not the id
 * @param alleles its alleles in declared order
 * @param expressions its declared expressions, not all of which need be reached
 * @param order the order statements
 * @param shows what alleles and pairs show, by key
 * @param wildType the wild type, if declared
 * @param evidence the evidence of its statements, if stated
 */
record RandomLocus(
        String id,
        Optional<String> symbol,
        List<Allele> alleles,
        List<String> expressions,
        List<Dominance.Order> order,
        Map<String, String> shows,
        Optional<String> wildType,
        Optional<String> evidence) {

    private static final List<String> NAMES = List.of("A", "B", "C", "D");

    static RandomLocus draw(SplittableRandom random, int index, int mostAlleles) {
        String id = NAMES.get(index);
        int count = random.nextInt(8) == 0 ? 1 : random.nextInt(2, Math.max(3, mostAlleles + 1));
        List<Allele> alleles = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            alleles.add(allele(random, id, i));
        }
        List<String> expressions = new ArrayList<>();
        int expressed = random.nextInt(1, 5);
        for (int i = 1; i <= expressed; i++) {
            expressions.add("look " + i + " of " + id);
        }
        List<Dominance.Order> order = order(random, alleles);
        Map<String, String> shows = new LinkedHashMap<>();
        alleles.forEach(allele -> shows.put(allele.id(), pick(random, expressions)));
        Set<String> decided = below(order);
        for (int i = 0; i < count; i++) {
            for (int j = i + 1; j < count; j++) {
                String a = alleles.get(i).id();
                String b = alleles.get(j).id();
                if (!decided.contains(a + "/" + b) && !decided.contains(b + "/" + a)) {
                    shows.put(random.nextBoolean() ? a + "/" + b : b + "/" + a, pick(random, expressions));
                }
            }
        }
        Optional<String> wildType = random.nextBoolean()
                ? Optional.of(alleles.get(random.nextInt(count)).id())
                : Optional.empty();
        Optional<String> evidence = random.nextBoolean() ? Optional.of("study") : Optional.empty();
        Optional<String> symbol = random.nextInt(4) == 0 ? Optional.of("Locus" + id) : Optional.empty();
        return new RandomLocus(id, symbol, alleles, expressions, order, shows, wildType, evidence);
    }

    /** Symbols differ from ids now and then, have superscripts and synonyms, and may be those of another locus. */
    private static Allele allele(SplittableRandom random, String locus, int i) {
        String id = locus + (i + 1);
        return switch (random.nextInt(5)) {
            case 0 -> new Allele(id, "x" + i, Optional.empty(), List.of());
            case 1 -> new Allele(id, locus.toLowerCase(Locale.ROOT) + "^" + i, Optional.empty(), List.of());
            case 2 -> new Allele(id, id, Optional.of("allele " + i), List.of(id + "*"));
            default -> Allele.of(id);
        };
    }

    private static List<Dominance.Order> order(SplittableRandom random, List<Allele> alleles) {
        List<Dominance.Order> order = new ArrayList<>();
        int kind = random.nextInt(4);
        if (kind == 0) {
            return order;
        }
        List<Allele> ranked = new ArrayList<>(alleles);
        for (int i = ranked.size() - 1; i > 0; i--) {
            ranked.set(i, ranked.set(random.nextInt(i + 1), ranked.get(i)));
        }
        for (int i = 0; i < ranked.size(); i++) {
            for (int j = i + 1; j < ranked.size(); j++) {
                boolean full = kind == 1 && j == i + 1;
                if (full || random.nextInt(5) < 2) {
                    Optional<String> evidence = random.nextInt(4) == 0 ? Optional.of("practice") : Optional.empty();
                    order.add(new Dominance.Order(
                            ranked.get(i).id(), ranked.get(j).id(), evidence));
                }
            }
        }
        return order;
    }

    /** Every pair {@code upper/lower} that the order decides, by adding two-step chains until nothing is new. */
    private static Set<String> below(List<Dominance.Order> order) {
        Set<String> pairs = new LinkedHashSet<>();
        order.forEach(statement -> pairs.add(statement.dominant() + "/" + statement.recessive()));
        Set<String> more = new LinkedHashSet<>(pairs);
        do {
            pairs.addAll(more);
            for (String one : pairs) {
                for (String other : pairs) {
                    if (one.substring(one.indexOf('/') + 1).equals(other.substring(0, other.indexOf('/')))) {
                        more.add(one.substring(0, one.indexOf('/')) + other.substring(other.indexOf('/')));
                    }
                }
            }
        } while (more.size() > pairs.size());
        return pairs;
    }

    void describe(LocusBuilder builder) {
        symbol.ifPresent(builder::symbol);
        alleles.forEach(builder::allele);
        builder.expressions(expressions.toArray(String[]::new));
        order.forEach(builder::order);
        shows.forEach(builder::shows);
        wildType.ifPresent(builder::wildType);
        evidence.ifPresent(builder::evidence);
    }

    static <T> T pick(SplittableRandom random, List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
