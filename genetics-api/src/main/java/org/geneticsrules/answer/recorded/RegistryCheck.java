package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.RegistryReport.Entry;
import org.geneticsrules.answer.recorded.RegistryReport.Kindred;
import org.geneticsrules.answer.recorded.RegistryReport.Recheck;
import org.geneticsrules.answer.recorded.RegistryReport.Verdict;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.document.Reference;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Contradictions;
import org.geneticsrules.inference.Cost;
import org.geneticsrules.inference.Notice;
import org.geneticsrules.inference.RecordRef;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.RegistryKinship;

/** Checks a registry portion by portion, each a number of whole kindreds. */
final class RegistryCheck {

    /** A portion is filled with kindreds up to this many animals, unless one has more. */
    private static final int PORTION = 5_000;

    /** Kindreds of up to so many cells are not worth looking at one by one. */
    private static final double LITTLE = 1 << 16;

    private final Ground ground;
    private final RegistryQuestion question;
    private final Progress progress;
    private final Set<String> loci = new LinkedHashSet<>();
    private final List<Conflict> conflicts = new ArrayList<>();
    private final List<Recheck> recheck = new ArrayList<>();
    private final Map<String, Set<Integer>> conflictsOf = new LinkedHashMap<>();
    private final Set<String> undecided = new LinkedHashSet<>();
    private final Map<String, List<Chance>> chances = new LinkedHashMap<>();
    private final List<Kindred> kindreds = new ArrayList<>();
    private final Draft draft;
    private final BooleanSupplier isOver;
    private List<Origin> origins = List.of();
    private long done;

    RegistryCheck(Ground ground, RegistryQuestion question, Progress progress, BooleanSupplier isOver) {
        this.ground = ground;
        this.question = question;
        this.progress = progress;
        this.isOver = isOver;
        this.draft = new Draft(ground);
        question.carrying().forEach(allele -> loci.add(allele.locus()));
    }

    RegistryReport report() {
        Pedigree whole = ground.pedigree();
        List<Notice> told = ground.inference(whole).notices();
        unlessInterrupted();
        Set<String> matter = Altered.read(ground.compiled(), whole);
        matter.addAll(loci);
        unlessInterrupted();
        if (!loci.isEmpty()) {
            origins = origins(whole, matter);
        }
        long all = Math.max(1, whole.individuals().size() * (1L + origins.size()));
        List<Pedigree> portions = Kindreds.of(whole).portions(PORTION);
        unlessInterrupted();
        for (Pedigree portion : portions) {
            contradictions(portion, all);
        }
        if (!origins.isEmpty()) {
            weigh(portions, all);
        }
        List<Entry> entries = entries(told, RegistryKinship.of(whole));
        draft.notices(whole, told);
        draft.rest(whole, matter, origins);
        draft.taken.add(
                "recorded-ancestors",
                "Inbreeding is counted by the ancestors that are recorded; founders and parents who are not count as unrelated.",
                (hasUncertainSires(whole)
                                ? "With more ancestors recorded, the number can rise but not fall where sires are certain; where several"
                                        + " males may be the sire it is the mean by their shares, and may rise or fall once it is known"
                                        + " which one was."
                                : "With more ancestors recorded, the number can rise but not fall.")
                        + " Before a mating is planned, ask a veterinarian or an adviser on breeding.");
        draft.raise(Situation.of("records"));
        draft.raise(Situation.of("parentage"));
        Answers answers = ground.answers();
        EvidenceLevel evidence = answers.evidence(draft.statements, draft.populations);
        return new RegistryReport(
                verdict(entries),
                entries,
                conflicts,
                recheck,
                kindreds,
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
        Pedigree founders = Altered.founders(whole);
        return ground.weigh(founders, inference -> inference.conclude(matter), draft.notices).stream()
                .map(Weighed::origin)
                .toList();
    }

    private static boolean hasUncertainSires(Pedigree whole) {
        return whole.litters().values().stream()
                .anyMatch(litter -> litter.sires() instanceof Paternity.Candidates several
                        && several.candidates().size() > 1);
    }

    private static void unlessInterrupted() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("the check of the registry was interrupted");
        }
    }

    private void step(long animals, long all) {
        unlessInterrupted();
        done += animals;
        progress.at(Math.min(done, all), all);
    }

    private void contradictions(Pedigree portion, long all) {
        Contradictions found = ground.inference(portion)
                .watched(RegistryCheck::unlessInterrupted)
                .contradictions();
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

    /** Relatives whose chances are worked out together, and what that costs. */
    private record Task(Pedigree relatives, List<Cost> costs, double cells, long animals) {
        /** What tasks are sorted by: where tables are small, the number of animals decides alone. */
        double weight() {
            return Math.max(LITTLE, cells);
        }
    }

    /** Ends what takes more time than there is. */
    private static final class OutOfTime extends RuntimeException {
        private static final long serialVersionUID = 1;

        OutOfTime() {
            super("the time is over", null, false, false);
        }
    }

    private void weigh(List<Pedigree> portions, long all) {
        List<Task> tasks = new ArrayList<>();
        portions.forEach(portion -> tasks.addAll(tasks(portion)));
        tasks.sort(Comparator.comparingDouble(Task::weight).thenComparingLong(Task::animals));
        int left = tasks.stream().mapToInt(task -> task.costs().size()).sum();
        progress.left(left);
        for (Task task : tasks) {
            boolean inTime = true;
            for (Origin origin : origins) {
                inTime &= weigh(task, origin);
            }
            for (Cost cost : task.costs()) {
                kindreds.add(
                        new Kindred(cost.animals().get(0), cost.animals().size(), cost.cells(), cost.within(), inTime));
            }
            left -= task.costs().size();
            progress.left(left);
            step(task.animals() * origins.size(), all);
        }
        kindreds.sort(Comparator.comparingDouble(Kindred::cells).thenComparingInt(Kindred::animals));
    }

    /** Those that cost little together, as many animals as a portion has at most, and each of the others by itself. */
    private List<Task> tasks(Pedigree portion) {
        List<Cost> costs = costs(portion);
        List<Cost> cheap = costs.stream().filter(one -> one.cells() <= LITTLE).toList();
        if (cheap.size() == costs.size() || costs.size() == 1) {
            return List.of(task(portion, costs));
        }
        Kindreds apart = Kindreds.of(portion);
        List<Task> tasks = new ArrayList<>();
        if (!cheap.isEmpty()) {
            tasks.add(task(apart.around(firsts(cheap)), cheap));
        }
        for (Cost one : costs) {
            if (one.cells() > LITTLE) {
                tasks.add(task(apart.around(firsts(List.of(one))), List.of(one)));
            }
        }
        return tasks;
    }

    /** What each set of relatives costs by the origin by which it costs most; which animals are related is the same by all. */
    private List<Cost> costs(Pedigree portion) {
        List<Cost> most = List.of();
        for (Origin origin : origins) {
            List<Cost> found = ground.inference(portion, origin)
                    .watched(RegistryCheck::unlessInterrupted)
                    .costs(loci);
            List<Cost> before = most.isEmpty() ? found : most;
            most = IntStream.range(0, found.size())
                    .mapToObj(i -> more(before.get(i), found.get(i)))
                    .toList();
        }
        return most;
    }

    private static Cost more(Cost one, Cost other) {
        return new Cost(one.animals(), Math.max(one.cells(), other.cells()), one.within() && other.within());
    }

    private static Task task(Pedigree relatives, List<Cost> costs) {
        return new Task(
                relatives,
                costs,
                costs.stream().mapToDouble(Cost::cells).max().orElse(0),
                costs.stream().mapToLong(one -> one.animals().size()).sum());
    }

    private static List<String> firsts(List<Cost> costs) {
        return costs.stream().map(one -> one.animals().get(0)).toList();
    }

    /** Works out the chances of relatives, if there is time for it. */
    private boolean weigh(Task task, Origin origin) {
        Optional<Conclusions> found;
        try {
            unlessOver();
            found = Optional.of(ground.estimating(task.relatives(), origin)
                    .watched(this::unlessOver)
                    .concludeOnly(loci));
        } catch (OutOfTime e) {
            found = Optional.empty();
        }
        for (Cost cost : task.costs()) {
            for (String id : cost.animals()) {
                List<Chance> each = chances.computeIfAbsent(id, key -> new ArrayList<>());
                for (HiddenAllele one : question.carrying()) {
                    each.add(found.map(known -> Chance.carries(known, id, one))
                            .orElseGet(() -> Chance.unsettled(Standing.NOT_IN_TIME)));
                }
            }
        }
        return found.isPresent();
    }

    private void unlessOver() {
        unlessInterrupted();
        if (isOver.getAsBoolean()) {
            throw new OutOfTime();
        }
    }

    private List<Entry> entries(List<Notice> told, RegistryKinship kinship) {
        Map<String, Set<String>> early = new LinkedHashMap<>();
        Map<String, Set<String>> remarks = new LinkedHashMap<>();
        for (Notice one : told) {
            switch (one.kind()) {
                case NOT_JUDGEABLE -> add(early, one);
                case STAGE_MISSING, NOT_MODELLED -> add(remarks, one);
                case TAKEN_AS_JUDGEABLE, TAKEN_AS_LIT -> {}
            }
        }
        new NamesTold(ground, ground.pedigree())
                .nothing()
                .forEach((message, ids) -> ids.forEach(id -> remarks.computeIfAbsent(id, key -> new LinkedHashSet<>())
                        .add("of what it was called, " + message)));
        ImmutableList.Builder<Entry> entries = ImmutableList.builder();
        for (String id : ground.pedigree().individuals().keySet()) {
            entries.add(entry(id, early.getOrDefault(id, Set.of()), remarks.getOrDefault(id, Set.of()), kinship));
        }
        return entries.build();
    }

    private static void add(Map<String, Set<String>> of, Notice notice) {
        of.computeIfAbsent(notice.individual(), key -> new LinkedHashSet<>()).add(notice.message());
    }

    private Entry entry(String id, Set<String> early, Set<String> remarks, RegistryKinship kinship) {
        Set<Integer> places = conflictsOf.getOrDefault(id, Set.of());
        List<String> reasons = new ArrayList<>();
        for (int place : places) {
            reasons.add("These records do not fit one another under the model; please have them looked at again. "
                    + conflicts.get(place));
        }
        early.forEach(message -> reasons.add("Please look again when and where it can be told: " + message + "."));
        remarks.forEach(message -> reasons.add("No evidence: " + message + "."));
        Verdict verdict = !places.isEmpty()
                ? Verdict.QUERY
                : undecided.contains(id) ? Verdict.NOT_DECIDED : early.isEmpty() ? Verdict.ACCEPT : Verdict.LOOK_AGAIN;
        if (verdict == Verdict.NOT_DECIDED) {
            reasons.add(
                    0,
                    "Whether these records fit those of all relatives would take more room to find out than allowed.");
        }
        return new Entry(
                id,
                verdict,
                String.join(" ", reasons),
                places,
                kinship.inbreeding(id),
                kinship.generations(id),
                byAllele(chances.getOrDefault(id, List.of())));
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
