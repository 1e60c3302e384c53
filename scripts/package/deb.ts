import { spawnSync } from 'node:child_process'
import { chmodSync, cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'

// Made by Debian's own tool and not by the packager, whose tool comes from the network and which registers no file type
// with two dots in its ending. *Source:* Debian Policy 4.7; freedesktop.org, Desktop Entry 1.5 and Shared MIME-info 0.22.

interface Manifest {
  readonly version: string
  readonly description: string
}

const mime = 'application/vnd.pitchline.build+json'

/** What Chromium needs of a Debian, either name where newer ones renamed it. */
const depends = [
  'libgtk-3-0t64 | libgtk-3-0',
  'libnss3',
  'libgbm1',
  'libxss1',
  'libxtst6',
  'libasound2t64 | libasound2',
  'libatk-bridge2.0-0t64 | libatk-bridge2.0-0',
  'libcups2t64 | libcups2',
  'xdg-utils',
]

const desktop = `[Desktop Entry]
Type=Application
Name=Pitchline
Comment=Drivetrain and gearing explorer for electric tracked machines
Exec=/opt/Pitchline/pitchline %f
Icon=pitchline
Terminal=false
Categories=Science;Engineering;
MimeType=${mime};
StartupWMClass=Pitchline
`

const mimeType = `<?xml version="1.0" encoding="UTF-8"?>
<mime-info xmlns="http://www.freedesktop.org/standards/shared-mime-info">
  <mime-type type="${mime}">
    <comment>Pitchline build</comment>
    <sub-class-of type="application/json"/>
    <glob pattern="*.build.json" weight="80"/>
  </mime-type>
</mime-info>
`

/** Newer systems let no program make the namespaces of Chromium's sandbox that has no profile. */
const appArmor = `abi <abi/4.0>,
include <tunables/global>

profile pitchline "/opt/Pitchline/pitchline" flags=(unconfined) {
  userns,
  include if exists <local/pitchline>
}
`

const afterwards = `#!/bin/sh
set -e
# Where there are no namespaces for people, the sandbox starts by its own program.
chmod 4755 /opt/Pitchline/chrome-sandbox || true
if [ -d /etc/apparmor.d ] && [ -f /etc/apparmor.d/abi/4.0 ]; then
  cp /opt/Pitchline/resources/apparmor-profile /etc/apparmor.d/pitchline
  apparmor_parser --replace /etc/apparmor.d/pitchline 2>/dev/null || true
fi
update-desktop-database -q /usr/share/applications 2>/dev/null || true
update-mime-database /usr/share/mime 2>/dev/null || true
`

/** Files of people stay where they are: only what came with the package goes. */
const gone = `#!/bin/sh
set -e
rm -f /etc/apparmor.d/pitchline
update-desktop-database -q /usr/share/applications 2>/dev/null || true
update-mime-database /usr/share/mime 2>/dev/null || true
`

const control = ({ version, description }: Manifest, kib: number) => `Package: pitchline
Version: ${version}
Architecture: amd64
Maintainer: the Pitchline authors <authors@pitchline.example>
Installed-Size: ${kib}
Section: science
Priority: optional
Depends: ${depends.join(', ')}
Description: ${description}
 Will it hold, how fast, how hot: gears, belts, tracks, motor and pack of an
 electric tracked machine.
`

function put(root: string, file: string, text: string, mode = 0o644): void {
  const whole = path.join(root, file)
  mkdirSync(path.dirname(whole), { recursive: true })
  writeFileSync(whole, text)
  chmodSync(whole, mode)
}

/** A .deb of the unpacked program; whether it was made. */
export function makeDeb(unpacked: string, out: string): boolean {
  const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as Manifest
  const root = path.join(out, '.deb')
  rmSync(root, { recursive: true, force: true })
  cpSync(unpacked, path.join(root, 'opt/Pitchline'), { recursive: true })
  put(root, 'opt/Pitchline/resources/apparmor-profile', appArmor)
  put(root, 'usr/share/applications/pitchline.desktop', desktop)
  put(root, 'usr/share/mime/packages/pitchline.xml', mimeType)
  put(root, 'usr/share/doc/pitchline/copyright', readFileSync('LICENSE', 'utf8'))
  const icons = path.join(root, 'usr/share/icons/hicolor')
  cpSync('assets/icon.svg', path.join(icons, 'scalable/apps/pitchline.svg'))
  cpSync('assets/icon.png', path.join(icons, '512x512/apps/pitchline.png'))
  const size = spawnSync('du', ['-sk', root], { encoding: 'utf8' }).stdout
  put(root, 'DEBIAN/control', control(manifest, Number.parseInt(size, 10)))
  put(root, 'DEBIAN/postinst', afterwards, 0o755)
  put(root, 'DEBIAN/postrm', gone, 0o755)
  const file = path.join(out, `pitchline_${manifest.version}_amd64.deb`)
  const { status } = spawnSync('dpkg-deb', ['--root-owner-group', '-Zxz', '-z1', '--build', root, file], {
    stdio: 'inherit',
  })
  rmSync(root, { recursive: true, force: true })
  return status === 0
}

/** A .tar.gz of the unpacked program, in a folder of its own name; whether it was made. */
export function makeTar(unpacked: string, out: string): boolean {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as Manifest
  const name = `pitchline-${version}-linux-x64`
  const words = [
    '-czf',
    path.join(out, `${name}.tar.gz`),
    '--owner=0',
    '--group=0',
    '--transform',
    `s,^\\.,${name},`,
  ]
  return spawnSync('tar', [...words, '-C', unpacked, '.'], { stdio: 'inherit' }).status === 0
}
