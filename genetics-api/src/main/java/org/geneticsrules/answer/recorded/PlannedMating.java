package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.MatingConcerns;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Kinship;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Two recorded animals and a litter that they might have: kits are put into the pedigree as if they were born, and what the engine makes of
 * records of them tells how likely such records are. So whatever ties the kits to one another, and to all relatives, is taken into account.
 */
final class PlannedMating {

    private final Ground ground;
    private final Pedigree kindred;
    private final String sire;
    private final String dam;

    private PlannedMating(Ground ground, Pedigree kindred, String sire, String dam) {
        this.ground = ground;
        this.kindred = kindred;
        this.sire = sire;
        this.dam = dam;
    }

    /**
     * Plans a mating.
     *
     * @throws ProblemsException if they are of one sex, one has no known sex and the other's does not tell it, they are one animal, or one
     *     cannot have young
     */
    static PlannedMating of(Ground ground, String one, String other) {
        Pedigree kindred = Kindreds.of(ground.pedigree()).around(List.of(one, other));
        Optional<Sex> sex = sex(kindred, one);
        Optional<Sex> second = sex(kindred, other);
        if (one.equals(other)) {
            throw refused(
                    "one-animal", "a mating needs two animals, but both are " + RecordWords.quoted(one), "a mate");
        }
        if (sex.isEmpty() && second.isEmpty()) {
            throw refused(
                    "sex-needed",
                    "neither the sex of " + RecordWords.quoted(one) + " nor that of " + RecordWords.quoted(other)
                            + " is recorded",
                    "the sex of one of them");
        }
        Sex first = sex.orElseGet(() -> second.orElseThrow().other());
        if (second.isPresent() && second.get() == first) {
            throw refused(
                    "wrong-sex",
                    RecordWords.quoted(one) + " and " + RecordWords.quoted(other) + " are both " + first.word(),
                    "a female and a male");
        }
        for (String parent : List.of(one, other)) {
            Individual recorded = kindred.individual(parent);
            if (recorded.fertility().excludesYoung()) {
                throw refused(
                        "no-young",
                        RecordWords.quoted(parent) + " is recorded as "
                                + recorded.fertility().word(),
                        "an animal that can have young");
            }
        }
        return first == Sex.MALE
                ? new PlannedMating(ground, kindred, one, other)
                : new PlannedMating(ground, kindred, other, one);
    }

    private static ProblemsException refused(String code, String message, String expected) {
        return new ProblemsException(
                Problem.of(Stage.MEANING, code, "", message).expecting(expected));
    }

    /** The sex of an animal, as recorded or as a parent has it. */
    static Optional<Sex> sex(Pedigree pedigree, String id) {
        return pedigree.individual(id)
                .sex()
                .or(() -> pedigree.littersOf(id).stream()
                        .findFirst()
                        .map(litter -> litter.dam().filter(id::equals).isPresent() ? Sex.FEMALE : Sex.MALE));
    }

    Pedigree kindred() {
        return kindred;
    }

    String sire() {
        return sire;
    }

    String dam() {
        return dam;
    }

    Sex sexOf(String parent) {
        return parent.equals(sire) ? Sex.MALE : Sex.FEMALE;
    }

    /** The pedigree with a litter of them; each kit with what would be recorded of it, or nothing. */
    private Pedigree with(List<Optional<Observation>> kits) {
        if (kits.isEmpty()) {
            return kindred;
        }
        PedigreeBuilder builder = Altered.with(kindred, List.of(), List.of(), Set.of());
        List<String> ids = new ArrayList<>();
        for (Optional<Observation> record : kits) {
            String id = Altered.fresh(kindred, "planned kit " + (ids.size() + 1));
            Individual kit = Individual.of(id);
            builder.add(record.map(kit::with).orElse(kit));
            ids.add(id);
        }
        return builder.add(new Litter(
                        Altered.fresh(kindred, "planned litter"),
                        Optional.of(dam),
                        Paternity.of(sire),
                        Optional.empty(),
                        OptionalInt.empty(),
                        OptionalInt.empty(),
                        Optional.empty(),
                        ids))
                .build();
    }

    /**
     * What follows from a litter, real or supposed.
     *
     * @param standing how far it is settled
     * @param logLikelihood the logarithm of the chance of all records, where it is
     * @param found all that follows
     */
    record Run(Standing standing, double logLikelihood, Conclusions found) {}

    /** Supposes a litter: what would be recorded of each kit, or nothing, and at which loci it is looked at. */
    Run suppose(Origin origin, List<Optional<Observation>> kits, Set<String> loci) {
        Conclusions found = ground.inference(with(kits), origin).conclude(loci);
        Standing worst = Standing.EXACT;
        for (String locus : loci) {
            for (String parent : List.of(sire, dam)) {
                worst = worse(worst, found.standing(parent, locus));
            }
        }
        return new Run(worst, found.logLikelihood(), found);
    }

    static Standing worse(Standing one, Standing other) {
        return one.compareTo(other) > 0 ? one : other; // they are declared from the best to the worst
    }

    /** How likely records of kits are, among litters of as many kits. */
    Chance chance(Origin origin, List<Observation> records, Set<String> loci) {
        List<Optional<Observation>> kits = records.stream().map(Optional::of).toList();
        Run unseen = suppose(
                origin,
                records.stream().map(one -> Optional.<Observation>empty()).toList(),
                loci);
        return unseen.standing() == Standing.EXACT
                ? ratio(unseen, suppose(origin, kits, loci))
                : Chance.unsettled(unseen.standing());
    }

    /** How likely what is recorded in one run is, given what is recorded in another, which was settled. */
    static Chance ratio(Run before, Run after) {
        return switch (after.standing()) {
            case EXACT -> Chance.exact(Math.exp(after.logLikelihood() - before.logLikelihood()));
            case CONTRADICTED -> Chance.exact(0);
            case SAMPLED, NOT_CONVERGED, TOO_LARGE, NOT_IN_TIME ->
                Chance.unsettled(Standing.TOO_LARGE); // an estimate has no likelihood
        };
    }

    /** How closely the two are related, as cautions ask for it. */
    Relation relation() {
        if (kindred.parentsOf(sire).contains(dam) || kindred.parentsOf(dam).contains(sire)) {
            return Relation.PARENT_OFFSPRING;
        }
        int common = 0;
        for (String parent : ImmutableSet.copyOf(kindred.parentsOf(sire))) {
            common += kindred.parentsOf(dam).contains(parent) ? 1 : 0;
        }
        boolean mates =
                kindred.litterOf(sire).isPresent() && kindred.litterOf(sire).equals(kindred.litterOf(dam));
        if (mates || common > 0) {
            return mates || common > 1 ? Relation.SIBLINGS : Relation.HALF_SIBLINGS;
        }
        boolean known = kindred.parentsOf(sire).size() > 1
                && kindred.parentsOf(dam).size() > 1
                && inbreeding().filter(Probability::isZero).isPresent();
        return known ? Relation.UNRELATED : Relation.UNKNOWN;
    }

    /** The coefficient of inbreeding of their young, where it is not too long to calculate. */
    Optional<Probability> inbreeding() {
        try {
            return Optional.of(Kinship.of(kindred).between(sire, dam));
        } catch (TooLargeException manyAncestors) {
            return Optional.empty();
        }
    }

    /** All that has to be said of such a mating, and what is recorded of the two. */
    void tell(Draft draft, List<String> traits) {
        RecordWords words = new RecordWords(kindred);
        for (String parent : List.of(sire, dam)) {
            draft.given.addAll(words.facts(parent));
        }
        draft.notices.addAll(deaf());
        Relation relation = relation();
        draft.given.add("relation of the two: " + relation.word());
        inbreeding()
                .ifPresent(f -> draft.given.add("coefficient of inbreeding of their "
                        + draft.ground.answers().young().many() + ", as far back as is recorded: " + f));
        Animal hob = OwnRecords.of(ground.compiled(), kindred.individual(sire));
        Animal jill = OwnRecords.of(ground.compiled(), kindred.individual(dam));
        MatingQuestion question = MatingQuestion.of(hob, jill).between(relation).inTraits(traits);
        draft.raise(cautions(question));
        draft.raise(Situation.of("carriers"));
        draft.raise(Situation.of("plan").with(relation));
    }

    /** What is said of parents who are recorded as deaf. */
    private List<String> deaf() {
        return List.of(sire, dam).stream()
                .filter(parent -> kindred.individual(parent).hearing().stream().anyMatch(test -> test.isDeafInAnEar()))
                .map(parent -> RecordWords.quoted(parent)
                        + " is recorded as deaf in an ear or both; deafness may be passed on, so speak to a veterinarian before"
                        + " mating it")
                .toList();
    }

    /** What speaks against it. */
    MatingConcerns concerns(Collection<String> inSpiteOf) {
        MatingConcerns found = ground.answers()
                .concerns(
                        OwnRecords.of(ground.compiled(), kindred.individual(sire)),
                        OwnRecords.of(ground.compiled(), kindred.individual(dam)),
                        relation(),
                        inSpiteOf);
        return new MatingConcerns(found.relation(), inbreeding(), found.exclusions(), found.cautions(), deaf());
    }

    /** What the question about two animals that are not recorded has to say besides. */
    private Optional<Answer> cautions(MatingQuestion question) {
        try {
            return Optional.of(ground.answers().mating(question));
        } catch (ProblemsException | TooLargeException notTold) {
            return Optional.empty();
        }
    }

    /** The looks that are none of some. */
    static Set<Phenotype> others(Ground ground, List<String> traits, Set<Phenotype> signs) {
        Set<Phenotype> all = new LinkedHashSet<>(List.of(Phenotype.unspecified()));
        for (String trait : traits) {
            Set<Phenotype> longer = new LinkedHashSet<>();
            for (Phenotype look : all) {
                for (String state : ground.model().states(trait)) {
                    Map<String, String> states = new LinkedHashMap<>(look.asMap());
                    states.put(trait, state);
                    longer.add(Phenotype.from(states));
                }
            }
            all = longer;
        }
        all.removeIf(look -> signs.stream().anyMatch(look::shows));
        return all;
    }
}
