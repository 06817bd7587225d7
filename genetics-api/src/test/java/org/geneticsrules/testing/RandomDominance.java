package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Dominance;

/**
 * A random dominance: a full order, a table of all pairs, or a partial order with the rest tabled.
 *
 * @param order the order statements
 * @param shows what alleles and pairs show, by key
 */
record RandomDominance(List<Dominance.Order> order, Map<String, String> shows) {

    static RandomDominance draw(SplittableRandom random, List<Allele> alleles, List<String> expressions) {
        List<Dominance.Order> order = order(random, alleles);
        Map<String, String> shows = alone(random, alleles, expressions);
        Set<String> decided = below(order);
        for (int i = 0; i < alleles.size(); i++) {
            for (int j = i + 1; j < alleles.size(); j++) {
                String a = alleles.get(i).id();
                String b = alleles.get(j).id();
                if (!decided.contains(a + "/" + b) && !decided.contains(b + "/" + a)) {
                    shows.put(random.nextBoolean() ? a + "/" + b : b + "/" + a, RandomLocus.pick(random, expressions));
                }
            }
        }
        return new RandomDominance(order, shows);
    }

    /** What is left of dominance where animals have one strand at most. */
    static RandomDominance drawAlone(SplittableRandom random, List<Allele> alleles, List<String> expressions) {
        return new RandomDominance(List.of(), alone(random, alleles, expressions));
    }

    private static Map<String, String> alone(SplittableRandom random, List<Allele> alleles, List<String> expressions) {
        Map<String, String> shows = new LinkedHashMap<>();
        alleles.forEach(allele -> shows.put(allele.id(), RandomLocus.pick(random, expressions)));
        return shows;
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
}
