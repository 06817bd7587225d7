package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import org.geneticsrules.inference.RecordRef.DamOf;
import org.geneticsrules.inference.RecordRef.Observed;
import org.geneticsrules.inference.RecordRef.SexOf;
import org.geneticsrules.inference.RecordRef.SiresOf;
import org.geneticsrules.inference.RecordRef.Tested;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;

/** The single records of a pedigree, numbered in its order: individual by individual, its parents before what is recorded of itself. */
final class Dossier {

    private final Pedigree pedigree;
    private final boolean sexed;
    private final List<RecordRef> records = new ArrayList<>();
    private final Map<RecordRef, Integer> numbers = new LinkedHashMap<>();
    private final Map<String, BitSet> ofIndividual = new LinkedHashMap<>();

    /**
     * Numbers the records.
     *
     * @param pedigree the pedigree
     * @param sexed whether sexes are records; else they are taken for granted
     */
    Dossier(Pedigree pedigree, boolean sexed) {
        this.pedigree = pedigree;
        this.sexed = sexed;
        for (Individual one : pedigree.individuals().values()) {
            Optional<Litter> litter = pedigree.litterOf(one.id());
            BitSet own = new BitSet();
            if (litter.isPresent()) {
                if (litter.get().dam().isPresent()) {
                    own.set(number(new DamOf(litter.get().id())));
                }
                if (!litter.get().sires().males().isEmpty()) {
                    own.set(number(new SiresOf(litter.get().id())));
                }
            }
            if (sexed && one.sex().isPresent()) {
                own.set(number(new SexOf(one.id())));
            }
            for (int i = 0; i < one.observations().size(); i++) {
                own.set(number(new Observed(one.id(), i)));
            }
            for (int i = 0; i < one.tests().size(); i++) {
                own.set(number(new Tested(one.id(), i)));
            }
            ofIndividual.put(one.id(), own);
        }
    }

    private int number(RecordRef ref) {
        return numbers.computeIfAbsent(ref, key -> {
            records.add(key);
            return records.size() - 1;
        });
    }

    /** All records. */
    BitSet all() {
        BitSet set = new BitSet();
        set.set(0, records.size());
        return set;
    }

    List<RecordRef> refs(BitSet set) {
        return set.stream().mapToObj(records::get).collect(ImmutableList.toImmutableList());
    }

    /** All that is recorded of some individuals, and who the parents of their litters are. */
    BitSet of(Collection<String> individuals) {
        BitSet set = new BitSet();
        for (String id : individuals) {
            set.or(ofIndividual.getOrDefault(id, new BitSet()));
        }
        return set;
    }

    /** The individuals whom records connect, in the order of the pedigree, set by set. */
    List<List<String>> kindreds() {
        Map<String, String> root = new LinkedHashMap<>();
        pedigree.individuals().keySet().forEach(id -> root.put(id, id));
        for (Litter litter : pedigree.litters().values()) {
            List<String> together = new ArrayList<>(litter.kits());
            litter.dam().ifPresent(together::add);
            together.addAll(litter.sires().males());
            together.forEach(id -> root.put(find(root, id), find(root, together.get(0))));
        }
        Map<String, List<String>> kindreds = new LinkedHashMap<>();
        root.keySet()
                .forEach(id -> kindreds.computeIfAbsent(find(root, id), key -> new ArrayList<>())
                        .add(id));
        return ImmutableList.copyOf(kindreds.values());
    }

    private static String find(Map<String, String> root, String id) {
        String at = id;
        while (true) {
            String next = root.getOrDefault(at, at);
            if (next.equals(at)) {
                return at;
            }
            String after = root.getOrDefault(next, next);
            root.put(at, after);
            at = after;
        }
    }

    /** What is left if only some records are true. */
    Kept keeping(BitSet set) {
        return new Keeping(set);
    }

    private final class Keeping implements Kept {

        private final BitSet set;
        private final Set<String> concerned = new LinkedHashSet<>();

        Keeping(BitSet set) {
            this.set = set;
            set.stream().forEach(number -> mention(records.get(number)));
            // litter-mates are, whatever is known of their parents
            for (String id : List.copyOf(concerned)) {
                pedigree.litterOf(id).ifPresent(litter -> concerned.addAll(litter.kits()));
            }
        }

        private void mention(RecordRef ref) {
            if (ref instanceof Observed one) {
                concerned.add(one.individual());
            } else if (ref instanceof Tested one) {
                concerned.add(one.individual());
            } else if (ref instanceof SexOf one) {
                concerned.add(one.individual());
            } else if (ref instanceof DamOf one) {
                Litter litter = litter(one.litter());
                litter.dam().ifPresent(concerned::add);
                concerned.addAll(litter.kits());
            } else if (ref instanceof SiresOf one) {
                Litter litter = litter(one.litter());
                concerned.addAll(litter.sires().males());
                concerned.addAll(litter.kits());
            }
        }

        private Litter litter(String id) {
            Litter found = pedigree.litters().get(id);
            if (found == null) {
                throw new IllegalArgumentException("no litter " + id);
            }
            return found;
        }

        private boolean has(RecordRef ref) {
            Integer number = numbers.get(ref);
            return number != null && set.get(number);
        }

        @Override
        public boolean concerns(String individual) {
            return concerned.contains(individual);
        }

        @Override
        public Individual recorded(Individual one) {
            return new Individual(
                    one.id(),
                    sexed ? one.sex().filter(sex -> has(new SexOf(one.id()))) : one.sex(),
                    one.born(),
                    one.population(),
                    kept(one.observations(), i -> new Observed(one.id(), i)),
                    one.names(),
                    kept(one.tests(), i -> new Tested(one.id(), i)),
                    one.hearing(),
                    one.fertility());
        }

        private <T> List<T> kept(List<T> all, IntFunction<RecordRef> ref) {
            List<T> left = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                if (has(ref.apply(i))) {
                    left.add(all.get(i));
                }
            }
            return left;
        }

        @Override
        public boolean dam(Litter litter) {
            return has(new DamOf(litter.id()));
        }

        @Override
        public boolean sires(Litter litter) {
            return has(new SiresOf(litter.id()));
        }
    }
}
