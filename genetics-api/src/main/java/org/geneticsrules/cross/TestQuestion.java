package org.geneticsrules.cross;

import com.google.common.collect.ImmutableSet;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.cross.Breeders.Breeder;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.Chain;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.KitLaw;
import org.geneticsrules.expression.View;
import org.geneticsrules.expression.Weights;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/**
 * Goes through what an animal and its mates may be, for the chance that a kit shows a sign.
 *
 * <p>What all mates have in common is told apart from what each has by itself: the animal itself, and the mates' parents where they are
 * sibs, are in common.
 */
final class TestQuestion {

    /** More combinations of what the animal and its mates may be than this are not gone through. */
    private static final int MOST_PAIRS = 1 << 16;

    private final CompiledModel compiled;
    private final Sex sex;
    private final Mate mate;
    private final Diagram<Phenotype> asked;

    /** Who survives, where pairs all of whose kits are lost have to be left out. */
    private final Optional<Diagram<Phenotype>> survival;

    private final Set<String> read;
    private final Breeders breeders;
    private final boolean bothSexes;
    private final Map<Meeting, Chain> chains = new HashMap<>();
    private int pairs;

    /** Gametes that meet at a unit, in a kit of one sex. */
    private record Meeting(Unit unit, Sex kit, Gametes sire, Gametes dam) {}

    private TestQuestion(
            CompiledModel compiled,
            Sex sex,
            Mate mate,
            Diagram<Phenotype> asked,
            Optional<Diagram<Phenotype>> survival,
            boolean weighted) {
        this.compiled = compiled;
        this.sex = sex;
        this.mate = mate;
        this.asked = asked;
        this.survival = survival;
        this.read = read();
        this.breeders = new Breeders(compiled, read, weighted);
        this.bothSexes = Litter.bothSexes(compiled.model(), asked, read)
                || survival.filter(lost -> Litter.bothSexes(compiled.model(), lost, read))
                        .isPresent();
    }

    /**
     * Returns a question; empty if the animal and its mates cannot have a kit that is counted, whatever is asked of it. The loci that
     * decide about that need not be among those of the question; where alleles of such a locus mutate, a kit is never ruled out.
     *
     * @param tested the animal
     * @param weighted whether the animals are weighed, with mutation, or only what is possible is asked
     */
    static Optional<TestQuestion> of(
            CompiledModel compiled, Sex sex, Mate mate, View view, Parent tested, boolean weighted) {
        Model model = compiled.model();
        Optional<Diagram<Phenotype>> survival = Optional.empty();
        if (Litter.hasLethals(model, view.census())) {
            Diagram<Phenotype> whole = compiled.survival(view.census());
            if (whole.loci().stream()
                    .allMatch(locus -> model.locus(locus).mutation().isEmpty())) {
                TestQuestion kits = new TestQuestion(compiled, sex, mate, whole, Optional.empty(), false);
                Set<Boolean> fertile = kits.fertile(tested);
                if (!fertile.contains(true)) {
                    return Optional.empty();
                }
                survival = Optional.of(whole).filter(lost -> fertile.contains(false) && kits.isTied(tested));
            }
        }
        return Optional.of(new TestQuestion(compiled, sex, mate, compiled.diagram(view), survival, weighted));
    }

    /** Whether loci that are inherited independently may depend on one another through what is known of the animals. */
    private boolean isTied(Parent tested) {
        return !mate.seen().isEmpty()
                || animals(tested).stream().anyMatch(one -> one.boxes().isUnion());
    }

    /** The loci of the question, and of who lives to be a mate where that is decided on the same chromosomes. */
    private Set<String> read() {
        Model model = compiled.model();
        Set<String> found = new LinkedHashSet<>(asked.loci());
        survival.ifPresent(lost -> found.addAll(lost.loci()));
        if (!(mate instanceof Mate.Known)) {
            found.addAll(compiled.matching(mate.seen(), Census.CONCEIVED).loci());
            for (Viability one : model.viability().values()) {
                boolean linked = model.groupOf(one.locus()).map(LinkageGroup::loci).orElse(List.of()).stream()
                        .anyMatch(found::contains);
                if (linked) {
                    found.add(one.locus());
                }
            }
        }
        return model.loci().keySet().stream().filter(found::contains).collect(ImmutableSet.toImmutableSet());
    }

    private ParentBoxes boxes(Sex of, Parent animal) {
        return new ParentBoxes(compiled, of, animal);
    }

    /** What is known of one of the animals of which something is stated, and what it is to the question. */
    private record Stated(String role, ParentBoxes boxes) {}

    private List<Stated> animals(Parent tested) {
        List<Stated> all = new ArrayList<>(List.of(new Stated("animal tested", boxes(sex, tested))));
        if (mate instanceof Mate.Known known) {
            all.add(new Stated("mate", boxes(sex.other(), known.animal())));
        } else if (mate instanceof Mate.OwnYoung own) {
            all.add(new Stated("other parent of the mate", boxes(sex.other(), own.partner())));
        } else if (mate instanceof Mate.YoungOf young) {
            all.add(new Stated("sire of the mate", boxes(Sex.MALE, young.sire())));
            all.add(new Stated("dam of the mate", boxes(Sex.FEMALE, young.dam())));
        }
        return all;
    }

    /** The loci at which somebody who has to be weighed lacks frequencies, in model order. */
    List<String> missingFrequencies(Parent tested) {
        Set<String> missing = new LinkedHashSet<>();
        animals(tested).forEach(one -> missing.addAll(one.boxes().withoutFrequencies(read)));
        return read.stream().filter(missing::contains).toList();
    }

    private void requireFrequencies(Parent tested) {
        Problems problems = new Problems(Stage.MEANING);
        animals(tested).forEach(one -> one.boxes().requireFrequencies(one.role(), read, problems));
        problems.throwIfAny();
    }

    /** Whether pairs that there may be have kits that are counted: true if some have, and false if some have none. */
    private Set<Boolean> fertile(Parent tested) {
        Set<Boolean> found = new LinkedHashSet<>();
        visit(tested, weights -> found.add(weights.kept().signum() > 0));
        return found;
    }

    /** The looks that some kit may show. */
    Set<Phenotype> possible(Parent tested) {
        Set<Phenotype> found = new LinkedHashSet<>();
        visit(tested, weights -> {
            for (int i = 0; i < weights.shares().length; i++) {
                if (weights.shares()[i].signum() > 0) {
                    found.add(asked.outcomes().get(i));
                }
            }
        });
        return found;
    }

    private void visit(Parent tested, Consumer<Weights> visitor) {
        breeders.known(boxes(sex, tested))
                .ifPresent(animals -> animals.outcomes()
                        .forEach(animal -> families(animal)
                                .ifPresent(families -> families.outcomes()
                                        .forEach(mates -> mates.outcomes()
                                                .forEach(
                                                        one -> kits(animal, one).ifPresent(visitor))))));
    }

    /**
     * The chance that a kit shows a sign, by what a mate is by itself, weighed by what all mates have in common; empty if there can be no
     * such animal, mate or kit.
     */
    Optional<Distribution<Distribution<Probability>>> chances(Parent tested, Set<Phenotype> signs) {
        requireFrequencies(tested);
        Mixture<Distribution<Probability>> rows = new Mixture<>();
        breeders.known(boxes(sex, tested))
                .ifPresent(animals -> animals.asMap()
                        .forEach((animal, weight) -> chances(animal, signs)
                                .ifPresent(families -> families.asMap().forEach((row, share) -> {
                                    Probability both = weight.times(share);
                                    rows.add(row, both.numerator(), both.denominator());
                                }))));
        return rows.distribution();
    }

    private Optional<Distribution<Distribution<Probability>>> chances(Breeder animal, Set<Phenotype> signs) {
        Mixture<Distribution<Probability>> rows = new Mixture<>();
        families(animal)
                .ifPresent(families -> families.asMap().forEach((mates, weight) -> {
                    Mixture<Probability> row = new Mixture<>();
                    mates.asMap().forEach((one, share) -> {
                        kits(animal, one)
                                .filter(kits -> kits.kept().signum() > 0)
                                .ifPresent(kits -> row.add(sign(kits, signs), share.numerator(), share.denominator()));
                    });
                    row.distribution()
                            .ifPresent(chances -> rows.add(chances, weight.numerator(), weight.denominator()));
                }));
        return rows.distribution()
                .map(families -> mate.areSibs() ? families : Distribution.certain(families.flatMap(row -> row)));
    }

    private Probability sign(Weights kits, Set<Phenotype> signs) {
        BigInteger sum = BigInteger.ZERO;
        for (int i = 0; i < kits.shares().length; i++) {
            if (signs.contains(asked.outcomes().get(i))) {
                sum = sum.add(kits.shares()[i]);
            }
        }
        return Probability.of(sum, kits.kept());
    }

    /** What mates of one family may be, weighed by the families that there may be. */
    private Optional<Distribution<Distribution<Breeder>>> families(Breeder animal) {
        if (mate instanceof Mate.Known known) {
            return breeders.known(boxes(sex.other(), known.animal())).map(Distribution::certain);
        }
        Mixture<Distribution<Breeder>> families = new Mixture<>();
        if (mate instanceof Mate.OwnYoung own) {
            breeders.known(boxes(sex.other(), own.partner()))
                    .ifPresent(partners -> partners.asMap().forEach((partner, weight) -> {
                        Breeder sire = sex == Sex.MALE ? animal : partner;
                        Breeder dam = sex == Sex.MALE ? partner : animal;
                        add(families, sire, dam, mate.seen(), weight);
                    }));
        } else if (mate instanceof Mate.YoungOf young) {
            breeders.known(boxes(Sex.MALE, young.sire()))
                    .ifPresent(sires -> breeders.known(boxes(Sex.FEMALE, young.dam()))
                            .ifPresent(dams -> sires.asMap()
                                    .forEach((sire, p) -> dams.asMap()
                                            .forEach((dam, q) -> add(families, sire, dam, mate.seen(), p.times(q))))));
        }
        return families.distribution();
    }

    private void add(
            Mixture<Distribution<Breeder>> families,
            Breeder sire,
            Breeder dam,
            List<Sighting> seen,
            Probability weight) {
        breeders.young(sex.other(), sire, dam, seen)
                .ifPresent(young -> families.add(young, weight.numerator(), weight.denominator()));
    }

    /** What comes of the kits of the animal and a mate; empty if none is counted, where that is asked by itself. */
    private Optional<Weights> kits(Breeder animal, Breeder other) {
        if (++pairs > MOST_PAIRS) {
            throw new TooLargeException(
                    "combinations of what the animal and its mates may be",
                    pairs,
                    MOST_PAIRS,
                    "ask about fewer traits, or state more of the genotypes.");
        }
        Breeder sire = sex == Sex.MALE ? animal : other;
        Breeder dam = sex == Sex.MALE ? other : animal;
        Optional<KitLaw> sons = bothSexes ? Optional.of(law(Sex.MALE, sire, dam)) : Optional.empty();
        Young young = new Young(law(Sex.FEMALE, sire, dam), sons);
        return survival.isEmpty() || young.weigh(survival.get()).kept().signum() > 0
                ? Optional.of(young.weigh(asked))
                : Optional.empty();
    }

    private KitLaw law(Sex kit, Breeder sire, Breeder dam) {
        List<Chain> all = new ArrayList<>();
        for (int u = 0; u < breeders.units().size(); u++) {
            all.add(chains.computeIfAbsent(
                    new Meeting(
                            breeders.units().get(u),
                            kit,
                            sire.gametes().get(u),
                            dam.gametes().get(u)),
                    met -> new Fertilisation(met.unit(), met.kit(), met.sire(), met.dam()).expressions()));
        }
        return KitLaw.of(kit, all);
    }
}
