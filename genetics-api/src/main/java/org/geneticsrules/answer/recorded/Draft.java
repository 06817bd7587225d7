package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.Status;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.document.Reference;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Contradictions;
import org.geneticsrules.inference.Notice;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Pedigree;

/** An answer about recorded animals while it is put together. Not thread-safe. */
final class Draft {

    /** Notices of one kind about one trait are told together from this number on. */
    private static final int MOST_NAMED = 3;

    final Ground ground;
    final Taken taken;
    final List<String> given = new ArrayList<>();
    final List<Conflict> conflicts = new ArrayList<>();
    final Set<String> notices = new LinkedHashSet<>();
    final Set<String> statements = new LinkedHashSet<>();
    final Set<Population> populations = new LinkedHashSet<>();
    private final Map<String, Caution> cautions = new LinkedHashMap<>();
    private Status status = Status.EXACT;

    Draft(Ground ground) {
        this.ground = ground;
        this.taken = new Taken(ground.model(), ground.answers().young());
    }

    /** Takes into account how far one number is settled. */
    void settled(Standing standing) {
        switch (standing) {
            case EXACT -> {}
            case SAMPLED -> status = status == Status.EXACT ? Status.SAMPLED : status;
            case NOT_CONVERGED, TOO_LARGE, NOT_IN_TIME, CONTRADICTED -> status = Status.UNDECIDED;
        }
    }

    void settled(List<Chance> chances) {
        chances.forEach(chance -> settled(chance.standing()));
    }

    void undecided() {
        status = Status.UNDECIDED;
    }

    void raise(Situation situation) {
        raise(ground.answers().cautions(situation));
    }

    void raise(Optional<Answer> answer) {
        answer.ifPresent(one -> raise(one.cautions()));
    }

    void raise(List<Caution> due) {
        due.forEach(caution -> cautions.putIfAbsent(caution.id(), caution));
    }

    /** Everything that goes with what is known of some loci from the records of a kindred. */
    void rest(Pedigree kindred, Set<String> loci, List<Origin> origins) {
        boolean weighted = !origins.isEmpty();
        taken.records(loci, ground.confusions(), weighted);
        populations.addAll(ground.of(kindred).used(origins));
        taken.weighting(populations, origins);
        statements.addAll(Bearings.of(ground.compiled(), ground.confusions(), kindred, loci, weighted));
    }

    /** Finds the contradictions among the records of a kindred. */
    void conflicts(Pedigree kindred, Contradictions found) {
        RecordWords words = new RecordWords(kindred);
        found.all().forEach(one -> conflicts.add(words.conflict(one)));
        if (!found.undecided().isEmpty()) {
            notices.add("whether the records of " + found.undecided().size()
                    + " animals contradict one another was not found out: it would take more room than allowed");
        }
    }

    /** Says which records of a kindred are no evidence, and what is weak about those that are. */
    void notices(Pedigree kindred, List<Notice> found) {
        NamesTold names = new NamesTold(ground, kindred);
        names.assume(taken);
        taken.told(found);
        Map<String, List<Notice>> alike = new LinkedHashMap<>();
        for (Notice one : found) {
            if (!one.kind().isEvidence()) {
                alike.computeIfAbsent(one.message(), key -> new ArrayList<>()).add(one);
            }
        }
        alike.forEach((message, ones) -> {
            Set<String> ids = new LinkedHashSet<>();
            ones.forEach(one -> ids.add(one.individual()));
            notices.add("no evidence in the records of " + who(ids) + ": " + message);
        });
        names.nothing()
                .forEach((message, ids) ->
                        notices.add("no evidence in what " + who(ids) + was(ids) + " called: " + message));
        names.remarks()
                .forEach((message, ids) -> notices.add("of what " + who(ids) + was(ids) + " called: " + message));
    }

    private static String was(Set<String> ids) {
        return ids.size() == 1 ? " was" : " were";
    }

    private static String who(Set<String> ids) {
        return ids.size() > MOST_NAMED
                ? ids.size() + " animals"
                : ids.stream().map(RecordWords::quoted).collect(Collectors.joining(", "));
    }

    List<Caution> cautions() {
        return new ArrayList<>(cautions.values());
    }

    RecordedAnswer answer(String kind, String question, String verdict, Finding finding) {
        Answers answers = ground.answers();
        EvidenceLevel evidence = answers.evidence(statements, populations);
        Pedigree pedigree = ground.pedigree();
        return new RecordedAnswer(
                kind,
                question,
                verdict,
                status,
                given,
                taken.list(),
                finding,
                conflicts,
                List.of(),
                Answers.rivals(evidence),
                cautions(),
                evidence,
                answers.compiled().model().reference(),
                new Reference(pedigree.id(), pedigree.version(), Optional.empty()),
                new ArrayList<>(notices),
                answers.young());
    }
}
