package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.RegistryReport.Entry;
import org.geneticsrules.answer.recorded.RegistryReport.Recheck;
import org.geneticsrules.answer.recorded.RegistryReport.Verdict;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.document.Reference;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Contradictions;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Notice;
import org.geneticsrules.inference.RecordRef;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;

/** Checks a registry portion by portion, each a number of whole kindreds. */
final class RegistryCheck {

    private final Ground ground;
    private final RegistryQuestion question;
    private final Progress progress;
    private final Set<String> loci = new LinkedHashSet<>();
    private final List<Conflict> conflicts = new ArrayList<>();
    private final List<Recheck> recheck = new ArrayList<>();
    private final Map<String, Set<Integer>> conflictsOf = new LinkedHashMap<>();
    private final Set<String> undecided = new LinkedHashSet<>();
    private final Map<String, List<Chance>> chances = new LinkedHashMap<>();
    private final Draft draft;
    private List<Origin> origins = List.of();
    private long done;

    RegistryCheck(Ground ground, RegistryQuestion question, Progress progress) {
        this.ground = ground;
        this.question = question;
        this.progress = progress;
        this.draft = new Draft(ground);
        question.carrying().forEach(allele -> loci.add(allele.locus()));
    }

    RegistryReport report() {
        Pedigree whole = ground.pedigree();
        List<Notice> told = ground.inference(whole).notices();
        Set<String> matter = Kindreds.read(ground.compiled(), whole);
        matter.addAll(loci);
        if (!loci.isEmpty()) {
            origins = origins(whole, matter);
        }
        long all = Math.max(1, whole.individuals().size() * (1L + origins.size()));
        for (Pedigree portion : Kindreds.portions(whole)) {
            contradictions(portion, all);
            for (Origin origin : origins) {
                weigh(portion, origin, all);
            }
        }
        List<Entry> entries = entries(told);
        draft.notices(told);
        draft.rest(whole, matter, origins);
        draft.raise(Situation.of("records"));
        draft.raise(Situation.of("parentage"));
        Answers answers = ground.answers();
        EvidenceLevel evidence = answers.evidence(draft.statements, draft.populations);
        return new RegistryReport(
                verdict(entries),
                entries,
                conflicts,
                recheck,
                question.carrying(),
                origins,
                draft.taken.list(),
                Answers.rivals(evidence),
                draft.cautions(),
                evidence,
                ground.model().reference(),
                new Reference(whole.id(), whole.version(), Optional.empty()),
                ImmutableList.copyOf(draft.notices));
    }

    /** Which origins founders can be weighed by is seen by a founder of each kind; nothing else is asked of them. */
    private List<Origin> origins(Pedigree whole, Set<String> matter) {
        Pedigree founders = Kindreds.founders(whole);
        return ground.weigh(founders, inference -> inference.conclude(matter), draft.notices).stream()
                .map(Weighed::origin)
                .toList();
    }

    private void step(long animals, long all) {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("the check of the registry was interrupted");
        }
        done += animals;
        progress.at(Math.min(done, all), all);
    }

    private void contradictions(Pedigree portion, long all) {
        Contradictions found = ground.inference(portion).contradictions();
        RecordWords words = new RecordWords(portion);
        found.all().forEach(one -> {
            int place = conflicts.size();
            conflicts.add(words.conflict(one));
            concerned(portion, one.records())
                    .forEach(id -> conflictsOf
                            .computeIfAbsent(id, key -> new LinkedHashSet<>())
                            .add(place));
        });
        undecided.addAll(found.undecided());
        if (!found.all().isEmpty()) {
            found.fewestToRecheck(question.sets())
                    .forEach(one -> recheck.add(new Recheck(
                            one.kindred().size(),
                            one.atLeast(),
                            one.sets().stream().map(words::cited).toList(),
                            one.more())));
        }
        step(portion.individuals().size(), all);
    }

    /** The animals that records are of; who the parents of a litter are is a record of its kits, if none of theirs is named besides. */
    private static Set<String> concerned(Pedigree portion, Collection<RecordRef> records) {
        Set<String> own = new LinkedHashSet<>();
        Set<String> kits = new LinkedHashSet<>();
        for (RecordRef record : records) {
            if (record instanceof RecordRef.Observed one) {
                own.add(one.individual());
            } else if (record instanceof RecordRef.Tested one) {
                own.add(one.individual());
            } else if (record instanceof RecordRef.SexOf one) {
                own.add(one.individual());
            } else {
                String id =
                        record instanceof RecordRef.DamOf one ? one.litter() : ((RecordRef.SiresOf) record).litter();
                Litter litter = portion.litters().get(id);
                kits.addAll(litter == null ? List.of() : litter.kits());
            }
        }
        return own.isEmpty() ? kits : own;
    }

    private void weigh(Pedigree portion, Origin origin, long all) {
        Inference inference = ground.estimating(portion, origin);
        Conclusions found = inference.conclude(loci);
        for (String id : portion.individuals().keySet()) {
            List<Chance> each = chances.computeIfAbsent(id, key -> new ArrayList<>());
            for (HiddenAllele one : question.carrying()) {
                each.add(Chance.carries(found, id, one));
            }
        }
        step(portion.individuals().size(), all);
    }

    private List<Entry> entries(List<Notice> told) {
        Map<String, Set<String>> early = new LinkedHashMap<>();
        Map<String, Set<String>> remarks = new LinkedHashMap<>();
        for (Notice one : told) {
            switch (one.kind()) {
                case NOT_JUDGEABLE -> add(early, one);
                case STAGE_MISSING, NOT_MODELLED -> add(remarks, one);
                case TAKEN_AS_JUDGEABLE -> {}
            }
        }
        ImmutableList.Builder<Entry> entries = ImmutableList.builder();
        for (String id : ground.pedigree().individuals().keySet()) {
            entries.add(entry(id, early.getOrDefault(id, Set.of()), remarks.getOrDefault(id, Set.of())));
        }
        return entries.build();
    }

    private static void add(Map<String, Set<String>> of, Notice notice) {
        of.computeIfAbsent(notice.individual(), key -> new LinkedHashSet<>()).add(notice.message());
    }

    private Entry entry(String id, Set<String> early, Set<String> remarks) {
        Set<Integer> places = conflictsOf.getOrDefault(id, Set.of());
        List<String> reasons = new ArrayList<>();
        for (int place : places) {
            reasons.add("These records do not fit one another under the model; please have them looked at again. "
                    + conflicts.get(place));
        }
        early.forEach(message -> reasons.add("Please look again when it can be told: " + message + "."));
        remarks.forEach(message -> reasons.add("No evidence: " + message + "."));
        Verdict verdict = !places.isEmpty()
                ? Verdict.QUERY
                : undecided.contains(id) ? Verdict.NOT_DECIDED : early.isEmpty() ? Verdict.ACCEPT : Verdict.LOOK_AGAIN;
        if (verdict == Verdict.NOT_DECIDED) {
            reasons.add(
                    0,
                    "Whether these records fit those of all relatives would take more room to find out than allowed.");
        }
        return new Entry(id, verdict, String.join(" ", reasons), places, byAllele(chances.getOrDefault(id, List.of())));
    }

    /** Chances are found origin by origin, and told allele by allele. */
    private List<Chance> byAllele(List<Chance> byOrigin) {
        List<Chance> sorted = new ArrayList<>();
        int alleles = question.carrying().size();
        for (int allele = 0; allele < alleles; allele++) {
            for (int at = allele; at < byOrigin.size(); at += alleles) {
                sorted.add(byOrigin.get(at));
            }
        }
        return sorted;
    }

    private String verdict(List<Entry> entries) {
        long open = count(entries, Verdict.NOT_DECIDED);
        if (conflicts.isEmpty()) {
            return "Of " + entries.size()
                    + " animals no records were found that contradict one another under this model"
                    + (open > 0 ? "; for " + open + " it was not decided" : "") + ".";
        }
        int least = recheck.stream().mapToInt(Recheck::atLeast).sum();
        return "Of " + entries.size() + " animals " + count(entries, Verdict.QUERY)
                + " have records that do not fit one another under this model; to make all fit, at least " + least
                + (least == 1 ? " record has" : " records have") + " to be looked at again"
                + (open > 0 ? "; for " + open + " animals it was not decided" : "") + ".";
    }

    private static long count(List<Entry> entries, Verdict wanted) {
        return entries.stream().filter(one -> one.verdict() == wanted).count();
    }
}
