package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.recorded.ExpectedInformation.Seen;
import org.geneticsrules.answer.recorded.ExpectedInformation.Told;
import org.geneticsrules.answer.recorded.LookNext.AtLocus;
import org.geneticsrules.answer.recorded.LookNext.Combined;
import org.geneticsrules.answer.recorded.LookNext.OfState;
import org.geneticsrules.answer.recorded.LookNext.OfTrait;
import org.geneticsrules.answer.recorded.LookNext.Word;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;

/** Puts together what should be looked at next. */
final class LookNextAnswer {

    /** Less than this is rounding, and counts as nothing; looks that differ by less tell the same. */
    private static final double NOTHING = 1e-9;

    /** A trait that tells less than this share of what the most telling one does is none of the most telling. */
    private static final double LEAST_SHARE = 0.1;

    private final Ground ground;
    private final LookNextQuestion question;
    private final String animal;
    private final Pedigree kindred;
    private final Individual recorded;
    private final List<String> traits;
    private final Map<String, Set<String>> loci = new LinkedHashMap<>();
    private final WhenTold told;
    private final LookClasses classes;
    private final Draft draft;

    LookNextAnswer(Ground ground, LookNextQuestion question) {
        this.ground = ground;
        this.question = question;
        this.animal = question.animal();
        this.kindred = Kindreds.of(ground.pedigree()).around(List.of(animal));
        this.recorded = kindred.individual(animal);
        NextLitterAnswer.requireRuled(ground, question.traits());
        ground.model().catalogue().check(question.stage());
        this.traits = ground.model().visibleTraits().stream()
                .filter(trait ->
                        question.traits().isEmpty() || question.traits().contains(trait))
                .toList();
        LookLoci read = new LookLoci(ground.compiled(), recorded);
        traits.forEach(trait -> loci.put(trait, read.of(trait)));
        this.told = new WhenTold(ground, question.stage());
        this.classes = new LookClasses(ground, kindred, animal);
        this.draft = new Draft(ground);
    }

    RecordedAnswer answer() {
        Set<String> all = inModelOrder(tied(inModelOrder(loci.values())));
        List<Weighed<ExpectedInformation>> weighed = ground.weigh(
                origin -> new ExpectedInformation(
                        ground.inference(kindred, origin), kindred, animal, question.stage(), all),
                draft.notices);
        List<Origin> origins = weighed.stream().map(Weighed::origin).toList();
        List<ExpectedInformation> looks = weighed.stream().map(Weighed::found).toList();
        List<Conclusions> before =
                looks.stream().map(ExpectedInformation::before).toList();
        // records that contradict one another at a locus that no look reads have no chance together either
        boolean contradicted = before.stream().anyMatch(found -> !found.isConsistent());
        List<OfTrait> rows = new ArrayList<>();
        List<AtLocus> left = new ArrayList<>();
        List<Combined> together = List.of();
        if (contradicted) {
            draft.undecided();
            draft.conflicts(kindred, ground.inference(kindred).contradictions());
        } else {
            traits.forEach(trait -> rows.add(row(trait, looks)));
            rows.sort(Comparator.comparingLong(LookNextAnswer::rank));
            all.stream()
                    .map(at -> classes.at(ground.model().locus(at), before))
                    .filter(at -> at.expressions().size() > 1)
                    .forEach(left::add);
            Set<String> chosen = classes.combined(telling(rows), left);
            together = classes.together(chosen, looks);
        }
        List<Combined> listed = LookClasses.listed(together);
        LookNext found =
                new LookNext(animal, question.stage(), origins, rows, left, listed, together.size() - listed.size());
        complete(found, all);
        return draft.answer(
                "look next",
                "What should be looked at next in " + RecordWords.quoted(animal) + stage() + "?",
                new LookNextWords(ground, found).verdict(contradicted),
                found);
    }

    private String stage() {
        return question.stage().equals(LifeStage.unstated()) ? "" : ", at " + question.stage();
    }

    private Set<String> read(String trait) {
        return ground.compiled().lociRead(List.of(trait));
    }

    private Set<String> inModelOrder(Iterable<Set<String>> some) {
        Set<String> named = new LinkedHashSet<>();
        some.forEach(named::addAll);
        return inModelOrder(named);
    }

    private Set<String> inModelOrder(Set<String> named) {
        Set<String> all = new LinkedHashSet<>(ground.model().loci().keySet());
        all.retainAll(named);
        return all;
    }

    /** Looks that tell something first, the most telling before the others; the sort keeps the declared order of the rest. */
    private static long rank(OfTrait row) {
        return row.word() == Word.TELLS ? -Math.round(row.mean() / NOTHING) : 1;
    }

    /**
     * The loci that the most telling traits read, and those that earlier looks tie to them; those that all traits read, if none tells
     * anything.
     */
    private Set<String> telling(List<OfTrait> rows) {
        Set<String> first = new LinkedHashSet<>();
        boolean any = rows.stream().anyMatch(row -> row.word() == Word.TELLS);
        for (OfTrait row : rows) {
            if (!any
                    || (row.word() == Word.TELLS
                            && row.mean() >= LEAST_SHARE * rows.get(0).mean())) {
                first.addAll(read(row.trait()));
            }
        }
        return tied(first);
    }

    /** Some loci, and those that earlier looks read together with one of them. */
    private Set<String> tied(Set<String> some) {
        Set<String> tied = new LinkedHashSet<>(some);
        for (Observation seen : recorded.observations()) {
            for (String trait : seen.traits()) {
                Set<String> there = ground.model().rules().containsKey(trait) ? read(trait) : Set.of();
                if (there.stream().anyMatch(some::contains)) {
                    tied.addAll(there);
                }
            }
        }
        return tied;
    }

    private OfTrait row(String trait, List<ExpectedInformation> looks) {
        Optional<String> note = told.note(trait);
        Optional<String> from = told.from(trait);
        if (told.isTooEarly(trait)) {
            return new OfTrait(trait, Word.NOT_YET, List.of(), List.of(), from, note);
        }
        Optional<String> lacking = told.lacking(trait);
        if (lacking.isPresent()) {
            return new OfTrait(trait, Word.STAGE_NEEDED, List.of(), List.of(), lacking, note);
        }
        if (isRecorded(trait)) {
            return new OfTrait(trait, Word.RECORDED, List.of(), List.of(), from, note);
        }
        Set<String> at = Objects.requireNonNull(loci.get(trait));
        List<String> states = ground.model().states(trait);
        List<Told> each =
                looks.stream().map(look -> look.look(trait, states, at)).toList();
        each.forEach(one -> draft.settled(one.information().standing()));
        return new OfTrait(
                trait,
                word(each),
                each.stream().allMatch(Told::claims)
                        ? each.stream().map(Told::information).toList()
                        : List.of(),
                states(states, each, at),
                from,
                note);
    }

    private static Word word(List<Told> told) {
        if (!told.stream().allMatch(Told::claims)) {
            return Word.NO_CLAIM;
        }
        if (told.stream().anyMatch(one -> one.information().bits().orElse(0) > NOTHING)) {
            return Word.TELLS;
        }
        boolean settled = told.stream().allMatch(one -> one.information().bits().isPresent());
        return settled && !told.isEmpty() ? Word.TELLS_NOTHING : Word.UNDECIDED;
    }

    /** A second look at the same stage tells nothing, unless the first may have been misread, was undecided or was made in a bad light. */
    private boolean isRecorded(String trait) {
        for (Observation seen : recorded.observations()) {
            long states = seen.looks().stream()
                    .map(look -> look.state(trait))
                    .distinct()
                    .count();
            boolean same =
                    seen.stage().equals(question.stage()) && seen.traits().contains(trait);
            boolean dim = ground.model()
                    .catalogue()
                    .trait(trait)
                    .filter(described -> described.judgeable(seen.light()) == Judgeable.NO)
                    .isPresent();
            if (same && !dim && states == 1 && ground.confusions().equals(Confusions.none())) {
                return true;
            }
        }
        return false;
    }

    /** What may be seen by any origin, and what that would leave by any of them. */
    private List<OfState> states(List<String> states, List<Told> told, Set<String> at) {
        List<OfState> found = new ArrayList<>();
        Map<String, Set<Map<String, AllelePair>>> after = new LinkedHashMap<>();
        Set<Map<String, AllelePair>> any = new LinkedHashSet<>();
        for (String state : states) {
            Set<Map<String, AllelePair>> genotypes = new LinkedHashSet<>();
            told.forEach(one -> Optional.ofNullable(one.states().get(state))
                    .ifPresent(seen -> genotypes.addAll(seen.genotypes().keySet())));
            after.put(state, genotypes);
            any.addAll(genotypes);
        }
        Map<String, Set<String>> now = classes.left(any);
        for (String state : states) {
            if (told.stream().noneMatch(one -> one.states().containsKey(state))) {
                continue;
            }
            Map<String, Set<String>> then = classes.left(after.getOrDefault(state, Set.of()));
            ImmutableMap.Builder<String, List<String>> leaves = ImmutableMap.builder();
            for (String locus : at) {
                Set<String> few = then.getOrDefault(locus, Set.of());
                if (!few.isEmpty()
                        && few.size() < now.getOrDefault(locus, Set.of()).size()) {
                    leaves.put(
                            locus,
                            ground.model().locus(locus).expressions().stream()
                                    .filter(few::contains)
                                    .toList());
                }
            }
            List<Chance> chances = new ArrayList<>();
            for (Told one : told) {
                Optional<Seen> seen = Optional.ofNullable(one.states().get(state));
                chances.add(
                        one.information().standing() == Standing.EXACT || seen.isPresent()
                                ? Chance.exact(seen.map(Seen::chance).orElse(0.0))
                                : Chance.unsettled(one.information().standing()));
            }
            found.add(new OfState(
                    state, chances, after.getOrDefault(state, Set.of()).size(), leaves.buildOrThrow()));
        }
        return found;
    }

    private void complete(LookNext found, Set<String> all) {
        draft.given.addAll(new RecordWords(kindred).facts(animal));
        draft.given.add(
                "related animals in the pedigree: " + (kindred.individuals().size() - 1));
        draft.rest(kindred, all, found.origins());
        for (OfTrait row : found.traits()) {
            if (row.word() == Word.TELLS || row.word() == Word.TELLS_NOTHING) {
                rests(row.trait());
            }
        }
        draft.notices(kindred, ground.inference(kindred).notices());
        if (found.origins().isEmpty()) {
            draft.undecided();
        }
        Animal own = OwnRecords.of(ground.compiled(), recorded);
        draft.raise(OwnRecords.coat(ground.answers(), own));
        draft.raise(Situation.of("coat").with(Role.ANIMAL, OwnRecords.looks(own)));
    }

    private void rests(String trait) {
        try {
            draft.statements.addAll(Kits.statements(ground.compiled(), List.of(trait), question.stage()));
        } catch (TooLargeException manyStatements) {
            draft.notices.add("what the look of " + trait + " rests on is too much to tell");
        }
    }
}
