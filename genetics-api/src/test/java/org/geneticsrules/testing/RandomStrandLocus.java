package org.geneticsrules.testing;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.DominanceBuilder;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * A random locus of any transmission.
 *
 * @param locus the locus, whose dominance is that of females if the sexes differ
 * @param transmission how it is handed down
 * @param ofMales the dominance of males, if it is another
 * @param alone what hemizygotes show, by allele, where that is not what the allele shows alone
 * @param absent what animals without the chromosome show
 * @param mutation rates of mutation, by allele before and after
 */
record RandomStrandLocus(
        RandomLocus locus,
        Transmission transmission,
        Optional<RandomDominance> ofMales,
        Map<String, String> alone,
        Optional<String> absent,
        Map<String, Map<String, Probability>> mutation) {

    static RandomStrandLocus draw(SplittableRandom random, int index, int mostAlleles, Transmission transmission) {
        RandomLocus drawn = RandomLocus.draw(random, index, mostAlleles);
        List<String> expressions = drawn.expressions();
        boolean pairs = transmission.recombines();
        RandomLocus locus = pairs ? drawn : drawn.with(RandomDominance.drawAlone(random, drawn.alleles(), expressions));
        Optional<RandomDominance> ofMales = Optional.empty();
        if (expressions.size() > 1 && random.nextInt(4) == 0) {
            ofMales = Optional.of(
                    pairs
                            ? RandomDominance.draw(random, drawn.alleles(), expressions)
                            : RandomDominance.drawAlone(random, drawn.alleles(), expressions));
        }
        Map<String, String> alone = new LinkedHashMap<>();
        if (transmission.partner().isPresent() && random.nextInt(3) == 0) {
            alone.put(RandomLocus.pick(random, locus.alleles()).id(), RandomLocus.pick(random, expressions));
        }
        boolean lacking = transmission.strands(Sex.FEMALE) == 0 || transmission.strands(Sex.MALE) == 0;
        Optional<String> absent = lacking ? Optional.of(RandomLocus.pick(random, expressions)) : Optional.empty();
        return new RandomStrandLocus(locus, transmission, ofMales, alone, absent, mutation(random, locus.alleles()));
    }

    private static Map<String, Map<String, Probability>> mutation(SplittableRandom random, List<Allele> alleles) {
        Map<String, Map<String, Probability>> mutation = new LinkedHashMap<>();
        if (alleles.size() > 1 && random.nextInt(6) == 0) {
            Allele from = RandomLocus.pick(random, alleles);
            Map<String, Probability> rates = new LinkedHashMap<>();
            for (Allele to : alleles) {
                if (!to.equals(from) && (rates.isEmpty() || random.nextBoolean())) {
                    rates.put(to.id(), Probability.of(1, random.nextInt(2, 6) * 2L));
                }
            }
            mutation.put(from.id(), rates);
        }
        return mutation;
    }

    /** Tells whether animals of both sexes can do without an expression, so that it may be lethal. */
    boolean canDoWithout(String expression) {
        boolean females = locus.dominance().shows().entrySet().stream().anyMatch(shown -> shows(shown, expression));
        boolean males = ofMales.orElse(locus.dominance()).shows().entrySet().stream()
                .anyMatch(shown -> shows(shown, expression));
        return females
                && males
                && !absent.equals(Optional.of(expression))
                && alone.values().stream().noneMatch(expression::equals);
    }

    private static boolean shows(Map.Entry<String, String> shown, String other) {
        return !shown.getKey().contains("/") && !shown.getValue().equals(other);
    }

    void describe(LocusBuilder builder) {
        locus.symbol().ifPresent(builder::symbol);
        locus.alleles().forEach(builder::allele);
        builder.expressions(locus.expressions().toArray(String[]::new));
        locus.wildType().ifPresent(builder::wildType);
        absent.ifPresent(builder::absent);
        mutation.forEach((from, rates) -> rates.forEach((to, rate) -> builder.mutation(from, to, rate)));
        String partner = transmission.partner().orElse("");
        if (ofMales.isPresent()) {
            builder.in(Sex.FEMALE, females -> state(females, locus.dominance(), partner));
            builder.in(Sex.MALE, males -> state(males, ofMales.get(), partner));
        } else {
            locus.dominance().order().forEach(builder::order);
            locus.dominance().shows().forEach(builder::shows);
            alone.forEach((allele, expression) -> builder.shows(allele + "/" + partner, expression));
            locus.evidence().ifPresent(builder::evidence);
        }
    }

    private void state(DominanceBuilder builder, RandomDominance dominance, String partner) {
        dominance.order().forEach(builder::order);
        dominance.shows().forEach(builder::shows);
        alone.forEach((allele, expression) -> builder.shows(allele + "/" + partner, expression));
        locus.evidence().ifPresent(builder::evidence);
    }
}
