package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Sex;

/**
 * A locus of one model or both, with all that animals of both may carry there.
 *
 * <p>Where both models have it, these are the genotypes of the alleles that both know. Where an animal has two strands in one model and
 * one in the other, a homozygote of the one is the hemizygote of the other. Where one model lacks the locus, animals carry the reference
 * allele alone.
 *
 * @param id id of the locus
 * @param before the locus in the first model
 * @param after the locus in the second model
 * @param reference the allele that an animal is said to carry unless it differs
 * @param choices what animals of each sex may carry, in declared order
 */
record ComparedLocus(
        String id,
        Optional<Locus> before,
        Optional<Locus> after,
        String reference,
        Map<Sex, ? extends List<Carried>> choices) {

    static ComparedLocus of(String id, Model before, Model after, String reference) {
        Optional<Locus> one = Optional.ofNullable(before.loci().get(id));
        Optional<Locus> other = Optional.ofNullable(after.loci().get(id));
        ImmutableMap.Builder<Sex, ImmutableList<Carried>> choices = ImmutableMap.builder();
        for (Sex sex : Sex.values()) {
            ImmutableList.Builder<Carried> carried = ImmutableList.builder();
            for (List<String> alleles : genotypes(one, other, reference, sex)) {
                Optional<AllelePair> mine = one.map(locus -> pair(locus, alleles, sex));
                Optional<AllelePair> theirs = other.map(locus -> pair(locus, alleles, sex));
                boolean lives = mine.map(pair -> lives(before, one.orElseThrow(), pair, sex))
                                .orElse(true)
                        && theirs.map(pair -> lives(after, other.orElseThrow(), pair, sex))
                                .orElse(true);
                boolean differs = alleles.stream().anyMatch(allele -> !allele.equals(reference));
                carried.add(new Carried(mine, theirs, differs, lives));
            }
            choices.put(sex, carried.build());
        }
        return new ComparedLocus(id, one, other, reference, choices.buildOrThrow());
    }

    /** What animals of a sex may carry, in declared order. */
    List<Carried> of(Sex sex) {
        return Objects.requireNonNull(choices.get(sex));
    }

    Optional<Locus> in(Which model) {
        return model == Which.BEFORE ? before : after;
    }

    /** The alleles that both models know, in the order of the first. */
    static List<String> shared(Locus one, Locus other) {
        return one.alleles().keySet().stream()
                .filter(other.alleles()::containsKey)
                .toList();
    }

    /** Whether the animals of a sex have no strand here in one model and some in the other, so that they are not comparable. */
    static boolean disagree(Locus one, Locus other, Sex sex) {
        return one.transmission().strands(sex) == 0 != (other.transmission().strands(sex) == 0);
    }

    /** Allele ids of each genotype: two, one or none. */
    private static List<List<String>> genotypes(Optional<Locus> one, Optional<Locus> other, String reference, Sex sex) {
        Locus any = one.or(() -> other).orElseThrow();
        List<String> alleles =
                one.isPresent() && other.isPresent() ? shared(one.get(), other.get()) : List.of(reference);
        int most = any.transmission().strands(sex);
        int least = other.map(locus -> locus.transmission().strands(sex)).orElse(most);
        if (most == 0 || least == 0) {
            return List.of(List.of());
        }
        List<List<String>> genotypes = new ArrayList<>();
        for (int i = 0; i < alleles.size(); i++) {
            genotypes.add(List.of(alleles.get(i)));
            for (int j = i + 1; j < alleles.size() && most == 2 && least == 2; j++) {
                genotypes.add(List.of(alleles.get(i), alleles.get(j)));
            }
        }
        return genotypes;
    }

    /** The genotype of these alleles; a single allele is carried on every strand. */
    private static AllelePair pair(Locus locus, List<String> alleles, Sex sex) {
        List<String> all = locus.alleles().keySet().stream().toList();
        int[] positions = IntStream.range(0, locus.transmission().strands(sex))
                .map(strand -> all.indexOf(alleles.get(Math.min(strand, alleles.size() - 1))))
                .toArray();
        return locus.of(positions);
    }

    private static boolean lives(Model model, Locus locus, AllelePair pair, Sex sex) {
        String shown = locus.expression(pair, sex);
        return model.viability().values().stream()
                .noneMatch(one -> one.locus().equals(locus.id())
                        && one.expressions().contains(shown)
                        && one.sex().orElse(sex) == sex
                        && (one.birth().isZero() || one.scored().isZero()));
    }
}
