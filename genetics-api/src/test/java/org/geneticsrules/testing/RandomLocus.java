package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.LocusBuilder;

/**
 * A random autosomal locus with its alleles and its dominance.
 *
 * @param id the locus
 * @param symbol its symbol, if it is not the id
 * @param alleles its alleles in declared order
 * @param expressions its declared expressions, not all of which need be reached
 * @param dominance what its genotypes show as
 * @param wildType the wild type, if declared
 * @param evidence the evidence of its statements, if stated
 */
record RandomLocus(
        String id,
        Optional<String> symbol,
        List<Allele> alleles,
        List<String> expressions,
        RandomDominance dominance,
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
        RandomDominance dominance = RandomDominance.draw(random, alleles, expressions);
        Optional<String> wildType = random.nextBoolean()
                ? Optional.of(alleles.get(random.nextInt(count)).id())
                : Optional.empty();
        Optional<String> evidence = random.nextBoolean() ? Optional.of("study") : Optional.empty();
        Optional<String> symbol = random.nextInt(4) == 0 ? Optional.of("Locus" + id) : Optional.empty();
        return new RandomLocus(id, symbol, alleles, expressions, dominance, wildType, evidence);
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

    RandomLocus with(RandomDominance other) {
        return new RandomLocus(id, symbol, alleles, expressions, other, wildType, evidence);
    }

    void describe(LocusBuilder builder) {
        symbol.ifPresent(builder::symbol);
        alleles.forEach(builder::allele);
        builder.expressions(expressions.toArray(String[]::new));
        dominance.order().forEach(builder::order);
        dominance.shows().forEach(builder::shows);
        wildType.ifPresent(builder::wildType);
        evidence.ifPresent(builder::evidence);
    }

    static <T> T pick(SplittableRandom random, List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
