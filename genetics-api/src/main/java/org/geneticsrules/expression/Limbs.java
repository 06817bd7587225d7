package org.geneticsrules.expression;

import java.math.BigInteger;

/**
 * Whole numbers of a fixed number of 64-bit digits, the lowest first, in parts of arrays: sums of products without an object for each
 * number (Knuth, The Art of Computer Programming vol. 2, section 4.3.1). Digits are unsigned.
 */
final class Limbs {

    private Limbs() {}

    /** The number of digits that numbers below or at a power of two need. */
    static int digits(double log2) {
        return (int) ((log2 + 1e-6) / Long.SIZE) + 1; // logarithms are rounded
    }

    static boolean isZero(long[] number, int at, int digits) {
        for (int i = 0; i < digits; i++) {
            if (number[at + i] != 0) {
                return false;
            }
        }
        return true;
    }

    /** The upper half of the product of two unsigned digits. */
    static long high(long a, long b) {
        return Math.multiplyHigh(a, b) + (a >> 63 & b) + (b >> 63 & a);
    }

    /**
     * Adds a product to a number that is wide enough for the sum.
     *
     * @param to array of the number that is added to
     * @param toAt where it begins
     * @param toDigits its digits, at least those of the other
     * @param from array of the number that is multiplied
     * @param fromAt where it begins
     * @param fromDigits its digits
     * @param factor one unsigned digit
     */
    static void addProduct(long[] to, int toAt, int toDigits, long[] from, int fromAt, int fromDigits, long factor) {
        long carry = 0;
        int i = 0;
        for (; i < fromDigits; i++) {
            long digit = from[fromAt + i];
            long low = digit * factor;
            long up = high(digit, factor);
            low += carry;
            up += Long.compareUnsigned(low, carry) < 0 ? 1 : 0;
            long sum = to[toAt + i] + low;
            up += Long.compareUnsigned(sum, low) < 0 ? 1 : 0;
            to[toAt + i] = sum;
            carry = up;
        }
        for (; carry != 0 && i < toDigits; i++) {
            long sum = to[toAt + i] + carry;
            carry = Long.compareUnsigned(sum, carry) < 0 ? 1 : 0;
            to[toAt + i] = sum;
        }
    }

    /** Writes a number that needs no more than the digits. */
    static void put(BigInteger value, long[] number, int at, int digits) {
        number[at] = value.longValue();
        BigInteger left = value;
        for (int i = 1; i < digits; i++) {
            left = left.shiftRight(Long.SIZE);
            number[at + i] = left.longValue();
        }
    }

    static BigInteger toBigInteger(long[] number, int at, int digits) {
        if (digits == 1 && number[at] >= 0) {
            return BigInteger.valueOf(number[at]);
        }
        byte[] bytes = new byte[digits * Long.BYTES];
        for (int i = 0; i < digits; i++) {
            long digit = number[at + i];
            for (int b = 0; b < Long.BYTES; b++) {
                bytes[bytes.length - 1 - i * Long.BYTES - b] = (byte) (digit >>> (b * Byte.SIZE));
            }
        }
        return new BigInteger(1, bytes);
    }
}
