package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.geneticsrules.inference.RecordRef.DamOf;
import org.geneticsrules.inference.RecordRef.Observed;
import org.geneticsrules.inference.RecordRef.SexOf;
import org.geneticsrules.inference.RecordRef.SiresOf;
import org.geneticsrules.inference.RecordRef.Tested;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Kindred.Candidate;
import org.geneticsrules.testing.brute.Kindred.Litter;
import org.geneticsrules.testing.brute.Kindred.Member;
import org.geneticsrules.testing.brute.Worlds;

/** Contradictions by trying sets of records, each by looking for a world in which all of it is true. */
final class BruteContradictions {

    /** More choices than this are not tried. */
    private static final long MOST = 200_000;

    /** A set of records was too large to try. */
    static final class TooMany extends RuntimeException {
        private static final long serialVersionUID = 1;
    }

    private final RandomPedigree random;
    private final Kindred kindred;
    private final List<RecordRef> records = new ArrayList<>();
    private final Map<Set<RecordRef>, Boolean> known = new HashMap<>();

    BruteContradictions(RandomPedigree random, Kindred kindred) {
        this.random = random;
        this.kindred = kindred;
        for (Member member : kindred.members()) {
            if (!member.sex().isEmpty() && random.model().distinguishesSex()) {
                records.add(new SexOf(member.id()));
            }
            for (int i = 0; i < member.sightings().size(); i++) {
                records.add(new Observed(member.id(), i));
            }
            for (int i = 0; i < member.tests().size(); i++) {
                records.add(new Tested(member.id(), i));
            }
        }
        for (Litter litter : kindred.litters()) {
            if (!litter.dam().isEmpty()) {
                records.add(new DamOf(litter.id()));
            }
            if (litter.sires().stream().anyMatch(sire -> !sire.id().isEmpty())) {
                records.add(new SiresOf(litter.id()));
            }
        }
    }

    List<RecordRef> records() {
        return records;
    }

    /** Whether some records can all be true. */
    boolean fit(Set<RecordRef> kept) {
        return known.computeIfAbsent(
                Set.copyOf(kept),
                key -> Worlds.any(random.genome(), keeping(kept), MOST).orElseThrow(TooMany::new));
    }

    boolean fitWithout(Set<RecordRef> dropped) {
        Set<RecordRef> kept = new LinkedHashSet<>(records);
        kept.removeAll(dropped);
        return fit(kept);
    }

    /** All subsets of a size, in the order of the records. */
    List<Set<RecordRef>> subsets(int size) {
        List<Set<RecordRef>> subsets = new ArrayList<>();
        subsets(0, size, new LinkedHashSet<>(), subsets);
        return subsets;
    }

    private void subsets(int from, int size, Set<RecordRef> taken, List<Set<RecordRef>> into) {
        if (size == 0) {
            into.add(new LinkedHashSet<>(taken));
            return;
        }
        for (int i = from; i <= records.size() - size; i++) {
            taken.add(records.get(i));
            subsets(i + 1, size - 1, taken, into);
            taken.remove(records.get(i));
        }
    }

    /** The kindred as if only some of its records had been made; litters and animals that these say nothing of are left out. */
    private Kindred keeping(Set<RecordRef> kept) {
        String anywhere = random.model().populations().keySet().iterator().next();
        Set<String> told = new LinkedHashSet<>();
        List<Litter> litters = new ArrayList<>();
        for (Litter litter : kindred.litters()) {
            boolean dam = kept.contains(new DamOf(litter.id()));
            boolean sires = kept.contains(new SiresOf(litter.id()));
            if (dam) {
                told.add(litter.dam());
            }
            if (sires) {
                litter.sires().forEach(sire -> told.add(sire.id()));
            }
            if (dam || sires) {
                told.addAll(litter.kits());
            }
            litters.add(new Litter(
                    litter.id(),
                    dam ? litter.dam() : "",
                    anywhere,
                    litter.sires().stream()
                            .map(sire -> new Candidate(sires ? sire.id() : "", anywhere, sire.share()))
                            .toList(),
                    litter.sirePerKit(),
                    litter.census(),
                    litter.kits()));
        }
        List<Member> members = new ArrayList<>();
        for (Member member : kindred.members()) {
            boolean sexed = !random.model().distinguishesSex() || kept.contains(new SexOf(member.id()));
            Member left = new Member(
                    member.id(),
                    sexed ? member.sex() : "",
                    anywhere,
                    kept(member.sightings(), kept, i -> new Observed(member.id(), i)),
                    kept(member.tests(), kept, i -> new Tested(member.id(), i)));
            members.add(left);
            if (!left.sightings().isEmpty()
                    || !left.tests().isEmpty()
                    || (random.model().distinguishesSex() && !left.sex().isEmpty())) {
                told.add(member.id());
            }
        }
        litters.removeIf(litter -> litter.kits().stream().noneMatch(told::contains));
        litters.forEach(litter -> told.addAll(litter.kits()));
        members.removeIf(member -> !told.contains(member.id()));
        return new Kindred(members, litters, List.of());
    }

    private static <T> List<T> kept(List<T> all, Set<RecordRef> kept, IntFunction<RecordRef> ref) {
        List<T> left = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (kept.contains(ref.apply(i))) {
                left.add(all.get(i));
            }
        }
        return left;
    }

    /** The size of the smallest sets that contradict themselves. */
    int smallest() {
        for (int size = 0; size <= records.size(); size++) {
            if (subsets(size).stream().anyMatch(set -> !fit(set))) {
                return size;
            }
        }
        throw new IllegalStateException("all records fit");
    }

    /** The smallest sets without which all fits. */
    Set<Set<RecordRef>> fewest() {
        for (int size = 0; ; size++) {
            Set<Set<RecordRef>> found = new LinkedHashSet<>();
            subsets(size).stream().filter(this::fitWithout).forEach(found::add);
            if (!found.isEmpty()) {
                return found;
            }
        }
    }

    /** The answer to a question; empty if it takes too many choices. */
    static <T> Optional<T> tried(Supplier<T> question) {
        try {
            return Optional.of(question.get());
        } catch (TooMany tooMany) {
            return Optional.empty();
        }
    }
}
