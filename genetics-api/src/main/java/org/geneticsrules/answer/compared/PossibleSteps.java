package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.geneticsrules.answer.MatingConcerns;
import org.geneticsrules.answer.compared.TellApartAnswer.LeftOut;
import org.geneticsrules.answer.compared.TellApartQuestion.Couple;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Locus;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.Step;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;

/** Lists the steps that recorded animals allow: looks, DNA tests, planned matings, and others if they are asked for. */
final class PossibleSteps {

    /** So many looks at animals are listed. */
    private static final int MOST_LOOKS = 240;

    /** So many DNA tests are listed. */
    private static final int MOST_TESTS = 60;

    /** So many recorded animals are gone through for looks, and for tests: each takes all relatives into account. */
    private static final int MOST_WORK = 24_000;

    /** So many couples are listed that are mated for this alone. */
    private static final int MOST_COUPLES = 24;

    /** So many couples are asked about what speaks against them. */
    private static final int MOST_ASKED = 100;

    /** Traits of which more looks are possible together are not looked at together. */
    private static final int MOST_STATES = 64;

    /**
     * A step that may be taken.
     *
     * @param alike other animals of whom it is worth the same
     * @param concerns for a mating, what speaks against it
     */
    record Possible(Step step, List<String> alike, Optional<MatingConcerns> concerns) {}

    private final RecordedAnswers recorded;
    private final Pedigree pedigree;
    private final List<Candidate> candidates;
    private final TellApartQuestion question;
    private final List<String> traits;
    private final List<String> together;
    private final Set<String> ofKits;
    private final Set<String> changing;
    private final List<Possible> found = new ArrayList<>();
    private final List<LeftOut> leftOut = new ArrayList<>();
    private final Set<String> notices = new LinkedHashSet<>();
    private final Set<String> said = new LinkedHashSet<>();
    private final Map<String, Caution> cautions = new LinkedHashMap<>();
    private final Map<Effort, Integer> untried = new EnumMap<>(Effort.class);

    /**
     * @param traits ids of the traits that every model speaks of and that are asked for
     * @param together those of them that are looked at together as well
     * @param ofKits those of them that are looked at in kits
     */
    PossibleSteps(
            RecordedAnswers recorded,
            List<Candidate> candidates,
            TellApartQuestion question,
            List<String> traits,
            List<String> together,
            Set<String> ofKits) {
        this.ofKits = ofKits;
        this.recorded = recorded;
        this.pedigree = recorded.pedigree();
        this.candidates = candidates;
        this.question = question;
        this.changing = new HashSet<>(traits.stream()
                .filter(trait -> !told(trait, LifeStage.unstated()))
                .toList());
        this.traits = traits.stream().filter(this::canBeTold).toList();
        List<String> several = together.stream().filter(this.traits::contains).toList();
        this.together = several.size() > 1 && states(several) <= MOST_STATES ? several : List.of();
    }

    private double states(List<String> several) {
        return several.stream()
                .mapToDouble(
                        trait -> catalogue().trait(trait).orElseThrow().states().size())
                .reduce(1, (one, other) -> one * other);
    }

    private Catalogue catalogue() {
        return candidates.get(0).model().catalogue();
    }

    /** Whether a look at a trait is evidence under every model, at a stage. */
    private boolean told(String trait, LifeStage stage) {
        for (Candidate one : candidates) {
            Phenotype any = Phenotype.of(trait, one.model().states(trait).get(0));
            try {
                one.compiled().evidence(List.of(new Reading(stage, Set.of(any))), Confusions.none());
            } catch (ProblemsException stageNeeded) {
                return false;
            }
        }
        return true;
    }

    private boolean canBeTold(String trait) {
        if (catalogue().judgeable(trait, question.stage()) == Judgeable.NO) {
            notices.add("looks at " + trait + " were not tried: it cannot be told so early, at " + question.stage());
            return false;
        }
        if (!told(trait, question.stage())) {
            notices.add("looks at " + trait
                    + " were not tried: what it looks like hangs on an age, a moult or a season that is not stated");
            return false;
        }
        return true;
    }

    /** Lists all, what breeds nobody first. */
    List<Possible> all() {
        looks();
        born();
        tests();
        planned().forEach(couple -> mating(Effort.PLANNED_MATING, couple));
        if (question.newMatings()) {
            newMatings();
        }
        return ImmutableList.copyOf(found);
    }

    List<LeftOut> leftOut() {
        return leftOut;
    }

    /** What was not listed, and why. */
    Set<String> notices() {
        return notices;
    }

    /** What is recorded of animals that speaks against mating them. */
    Set<String> said() {
        return said;
    }

    /** What has to be said of the matings that were asked about, those left out included. */
    List<Caution> cautions() {
        return new ArrayList<>(cautions.values());
    }

    /** By effort, how many steps more there are. */
    Map<Effort, Integer> untried() {
        return untried;
    }

    private void add(int most, Possible one) {
        Effort effort = one.step().effort();
        int few = Math.max(1, MOST_WORK / pedigree.individuals().size());
        if (found.stream().filter(other -> other.step().effort() == effort).count() < Math.min(most, few)) {
            found.add(one);
        } else {
            untried.merge(effort, 1, Integer::sum);
        }
    }

    // ---- animals that are there

    private void looks() {
        for (List<Individual> alike : groups()) {
            Individual animal = alike.get(0);
            List<String> others = alike.stream().skip(1).map(Individual::id).toList();
            boolean older = isOlder(animal);
            List<String> open = traits.stream()
                    .filter(trait -> !isRecorded(animal, trait) && !(older && changing.contains(trait)))
                    .toList();
            LifeStage stage = older ? LifeStage.unstated() : question.stage();
            for (String trait : open) {
                look(animal, List.of(trait), stage, others);
            }
            List<String> several = together.stream().filter(open::contains).toList();
            if (several.size() > 1) {
                look(animal, several, stage, others);
            }
        }
    }

    private void look(Individual animal, List<String> seen, LifeStage stage, List<String> others) {
        Step step = new Step.Look(animal.id(), seen, stage, Optional.empty());
        add(MOST_LOOKS, new Possible(step, others, Optional.empty()));
    }

    /** Litter-mates that are recorded alike and have no young are alike in all that may be found; parents come first. */
    private List<List<Individual>> groups() {
        Map<List<Object>, List<Individual>> groups = new LinkedHashMap<>();
        List<Individual> parents = new ArrayList<>();
        List<Individual> others = new ArrayList<>();
        pedigree.individuals()
                .values()
                .forEach(one -> (pedigree.littersOf(one.id()).isEmpty() ? others : parents).add(one));
        Stream.concat(parents.stream(), others.stream()).forEach(one -> {
            Optional<Litter> litter = pedigree.litterOf(one.id());
            List<Object> key =
                    litter.isPresent() && pedigree.littersOf(one.id()).isEmpty()
                            ? List.of(litter.get().id(), one.sex(), one.observations(), one.tests())
                            : List.of(one.id());
            groups.computeIfAbsent(key, any -> new ArrayList<>()).add(one);
        });
        return new ArrayList<>(groups.values());
    }

    private boolean isRecorded(Individual animal, String trait) {
        return animal.observations().stream()
                .anyMatch(seen -> seen.traits().contains(trait)
                        && seen.looks().size() == 1
                        && (!changing.contains(trait) || seen.stage().equals(question.stage()))
                        && catalogue().judgeable(trait, seen.stage()) != Judgeable.NO
                        && catalogue().trait(trait).orElseThrow().judgeable(seen.light()) != Judgeable.NO);
    }

    /** Whether an animal was older when it was looked at than the question says. */
    private boolean isOlder(Individual animal) {
        return animal.observations().stream()
                .map(Observation::stage)
                .anyMatch(seen -> isMore(seen.weeks(), question.stage().weeks())
                        || isMore(seen.moult(), question.stage().moult()));
    }

    private static boolean isMore(OptionalInt one, OptionalInt other) {
        return one.isPresent() && other.isPresent() && one.getAsInt() > other.getAsInt();
    }

    /** Kits that lived to be looked at and of which nothing is written down. */
    private void born() {
        for (Litter litter : pedigree.litters().values()) {
            int missing = litter.scoredCount().orElse(0) - litter.kits().size();
            if (missing > 0 && litter.dam().isPresent() && litter.sires() instanceof Paternity.Known known) {
                Couple couple = new Couple(known.sire(), litter.dam().get());
                kits(Effort.RECORD, couple, Math.min(missing, TellApartQuestion.MOST_KITS), Optional.empty());
            }
        }
    }

    private void tests() {
        List<String> loci = testable();
        for (List<Individual> alike : groups()) {
            Individual animal = alike.get(0);
            for (String locus : loci) {
                boolean known = animal.tests().stream()
                        .anyMatch(test -> test.locus().equals(locus)
                                && test.result().size() == 1
                                && test.error().isZero());
                if (!known) {
                    List<String> others =
                            alike.stream().skip(1).map(Individual::id).toList();
                    add(MOST_TESTS, new Possible(Step.test(animal.id(), locus), others, Optional.empty()));
                }
            }
        }
    }

    /** Loci that all models have, with the same alleles, of which a cause in the DNA is on record or an animal was tested already. */
    private List<String> testable() {
        Set<String> tested = new HashSet<>();
        pedigree.individuals().values().stream()
                .flatMap(one -> one.tests().stream())
                .map(GenotypeTest::locus)
                .forEach(tested::add);
        return candidates.get(0).model().loci().values().stream()
                .filter(this::isShared)
                .map(Locus::id)
                .filter(locus -> tested.contains(locus) || candidates.stream().anyMatch(one -> hasCause(one, locus)))
                .toList();
    }

    private boolean isShared(Locus locus) {
        List<String> pairs = pairs(locus);
        return candidates.stream().allMatch(one -> {
            Locus other = one.model().loci().get(locus.id());
            return other != null && pairs(other).equals(pairs);
        });
    }

    private static List<String> pairs(Locus locus) {
        return locus.pairs().stream().map(Object::toString).sorted().toList();
    }

    private static boolean hasCause(Candidate one, String locus) {
        String prefix = "/loci/" + locus;
        return one.model().statements().values().stream()
                .anyMatch(statement -> statement.grade() == Grade.MOLECULAR
                        && (statement.pointer().equals(prefix)
                                || statement.pointer().startsWith(prefix + "/")));
    }

    // ---- matings

    /** The planned matings, each turned round where the records say that it was stated with the dam first. */
    private Set<Couple> planned() {
        Set<Couple> couples = new LinkedHashSet<>();
        for (Couple stated : question.planned()) {
            Optional<Sex> first = sex(pedigree.individual(stated.sire()));
            Optional<Sex> second = sex(pedigree.individual(stated.dam()));
            boolean turned = first.map(Sex.FEMALE::equals).orElse(second.isPresent())
                    && second.map(Sex.MALE::equals).orElse(first.isPresent());
            couples.add(turned ? new Couple(/* sire= */ stated.dam(), /* dam= */ stated.sire()) : stated);
        }
        return couples;
    }

    /** The sex of an animal, as recorded or as a parent has it. */
    private Optional<Sex> sex(Individual one) {
        return one.sex()
                .or(() -> pedigree.littersOf(one.id()).stream()
                        .findFirst()
                        .map(litter -> litter.dam().filter(one.id()::equals).isPresent() ? Sex.FEMALE : Sex.MALE));
    }

    private void kits(Effort effort, Couple couple, int number, Optional<MatingConcerns> concerns) {
        List<List<String>> seen = new ArrayList<>();
        traits.stream().filter(ofKits::contains).forEach(trait -> seen.add(List.of(trait)));
        if (!together.isEmpty()) {
            seen.add(together);
        }
        for (List<String> one : seen) {
            Step step = new Step.Kits(
                    effort, couple.sire(), couple.dam(), number, 1, one, question.stage(), Optional.empty());
            found.add(new Possible(step, List.of(), concerns));
        }
    }

    /** Lists a mating, unless something speaks against it; returns whether it did. */
    private boolean mating(Effort effort, Couple couple) {
        String words = effort.words() + " of \"" + couple.sire() + "\" and \"" + couple.dam() + "\"";
        MatingConcerns concerns;
        try {
            concerns = recorded.concerns(couple.sire(), couple.dam(), question.inSpiteOf());
        } catch (ProblemsException e) {
            if (e.problems().stream().anyMatch(problem -> problem.code().equals("unknown-exclusion"))) {
                throw e;
            }
            leftOut.add(new LeftOut(words, e.problems().get(0).message(), Optional.empty()));
            return false;
        } catch (TooLargeException e) {
            leftOut.add(new LeftOut(
                    words, "what speaks against it would take more work than allowed to find out", Optional.empty()));
            return false;
        }
        concerns.cautions().forEach(one -> cautions.putIfAbsent(one.id(), one));
        if (effort == Effort.PLANNED_MATING) {
            said.addAll(concerns.notices());
        }
        if (!concerns.exclusions().isEmpty()) {
            concerns.exclusions().forEach(one -> leftOut.add(new LeftOut(words, one.line(), Optional.of(one.name()))));
            return false;
        }
        if (effort == Effort.NEW_MATING && !concerns.notices().isEmpty()) {
            concerns.notices().forEach(one -> leftOut.add(new LeftOut(words, one, Optional.empty())));
            return false;
        }
        kits(effort, couple, question.kits(), Optional.of(concerns));
        return true;
    }

    /** Couples that had litters before come first, then others. */
    private void newMatings() {
        Set<Couple> couples = new LinkedHashSet<>();
        for (Litter litter : pedigree.litters().values()) {
            if (litter.dam().isPresent() && litter.sires() instanceof Paternity.Known known) {
                couples.add(new Couple(known.sire(), litter.dam().get()));
            }
        }
        List<String> dams = suitable(Sex.FEMALE);
        suitable(Sex.MALE).forEach(sire -> dams.forEach(dam -> couples.add(new Couple(sire, dam))));
        couples.removeAll(planned());
        couples.removeIf(one -> !isSuitable(one.sire()) || !isSuitable(one.dam()));
        int listed = 0;
        int asked = 0;
        for (Couple couple : couples) {
            if (listed < MOST_COUPLES && asked < MOST_ASKED) {
                asked++;
                listed += mating(Effort.NEW_MATING, couple) ? 1 : 0;
            } else {
                untried.merge(Effort.NEW_MATING, traits.size() + (together.isEmpty() ? 0 : 1), Integer::sum);
            }
        }
    }

    private boolean isSuitable(String id) {
        return !pedigree.individual(id).fertility().excludesYoung();
    }

    /** Animals of a sex that may have young, those that had some first. */
    private List<String> suitable(Sex sex) {
        List<String> proven = new ArrayList<>();
        List<String> others = new ArrayList<>();
        for (Individual one : pedigree.individuals().values()) {
            if (sex(one).filter(sex::equals).isPresent() && isSuitable(one.id())) {
                (pedigree.littersOf(one.id()).isEmpty() ? others : proven).add(one.id());
            }
        }
        return Stream.concat(proven.stream(), others.stream()).toList();
    }
}
